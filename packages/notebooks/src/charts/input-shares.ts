/**
 * Which share of the variance of the days each input explains: alone, and with all it does together with others.
 *
 * Observable Plot: two bars with their intervals on each of a few rows.
 */
import * as Plot from '@observablehq/plot';
import { percent, type Estimate, type InputMatters, type Matters } from '@rideout/sim';
import { svg } from '../elements.ts';
import { chartFrame } from './chart-frame.ts';
import { baseRowsText, type InputChartOptions } from './input-swings.ts';
import { PLOT_STYLE } from './what-changes.ts';

interface Bar {
  readonly input: InputMatters;
  readonly id: string;
  readonly measure: 'alone' | 'in all';
  readonly share: Estimate;
}

const NAME_PX = 26;
const BAR_PX = 22;

/** Filled and outlined: told apart without colour. */
const LOOK = {
  alone: { colour: 'var(--series-1)', opacity: 0.85 },
  'in all': { colour: 'var(--series-4)', opacity: 0.16 },
} as const;

export function inputShares(matters: Matters, { width }: InputChartOptions): HTMLElement {
  const { inputs, strategyTitle, alternativeTitle } = matters;
  return chartFrame({
    id: 'input-shares',
    title: sharesFinding(matters),
    note: `Share of the variance of the days with “${strategyTitle}”, ${alternativeTitle}. Alone: what would go if the input were known. In all: what would stay if only the input were not known. Lines: 95\u00a0% intervals; an arrow: past the edge, as few rows tell little. Method: Saltelli et al. 2010, Computer Physics Communications 181:259–270.`,
    picture: picture(inputs, width),
    key: [
      { sample: barKey('alone'), text: 'alone (first-order index)' },
      { sample: barKey('in all'), text: 'in all, with what it does together with others (total index)' },
    ],
    sentences: [...inputs.map(sentence), ...togetherSentence(matters)],
    table: {
      caption: 'Shares of the variance of the days, with 95 % intervals.',
      columns: [
        { name: 'Input' },
        { name: 'Alone', number: true },
        { name: '95 % interval', number: true },
        { name: 'In all', number: true },
        { name: '95 % interval', number: true },
      ],
      rows: inputs.map(({ title, firstOrder, total }) => [
        title,
        shareText(firstOrder.value),
        interval(firstOrder),
        shareText(total.value),
        interval(total),
      ]),
      exact: inputs.map(({ id, title, firstOrder: f, total: t }) => ({
        input: id,
        title,
        firstOrder: f.value,
        firstOrderLow: f.low,
        firstOrderHigh: f.high,
        total: t.value,
        totalLow: t.low,
        totalHigh: t.high,
      })),
    },
    provenance: baseRowsText(matters),
  });
}

function picture(inputs: readonly InputMatters[], width: number): SVGSVGElement {
  const bars = inputs.flatMap((input): Bar[] => [
    { input, id: input.id, measure: 'alone', share: input.firstOrder },
    { input, id: input.id, measure: 'in all', share: input.total },
  ]);
  const onBar = { fy: 'id', y: 'measure' } as const;
  const look = (bar: Bar) => LOOK[bar.measure];
  return Plot.plot({
    width,
    height: 46 + inputs.length * (NAME_PX + 2 * BAR_PX),
    marginLeft: 14,
    marginRight: 104,
    marginTop: 4,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      domain: [0, 1],
      label: 'Share of the variance',
      labelArrow: 'none',
      labelAnchor: 'center',
      tickFormat: '.0%',
      ticks: 4,
      grid: true,
    },
    y: { axis: null, domain: ['alone', 'in all'], insetTop: NAME_PX - 2, padding: 0.2 },
    fy: { axis: null, domain: inputs.map(({ id }) => id), padding: 0 },
    marks: [
      Plot.text(inputs, {
        fy: 'id',
        frameAnchor: 'top-left',
        dx: 4,
        dy: 8,
        textAnchor: 'start',
        fontWeight: 650,
        text: 'title',
      }),
      Plot.barX(bars, {
        ...onBar,
        x1: 0,
        x2: (bar: Bar) => drawn(bar.share.value),
        fill: (bar: Bar) => look(bar).colour,
        fillOpacity: (bar: Bar) => look(bar).opacity,
        stroke: (bar: Bar) => look(bar).colour,
      }),
      Plot.link(bars, {
        ...onBar,
        x1: (bar: Bar) => drawn(bar.share.low),
        x2: (bar: Bar) => drawn(bar.share.high),
        y1: 'measure',
        y2: 'measure',
        stroke: 'var(--ink)',
        strokeWidth: 1.5,
      }),
      Plot.text(bars, {
        ...onBar,
        x: (bar: Bar) => Math.max(drawn(bar.share.high), drawn(bar.share.value)),
        dx: 8,
        textAnchor: 'start',
        text: (bar: Bar) => `${(bar.share.high ?? 0) > 1 ? '▶ ' : ''}${shareText(bar.share.value)}`,
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
      }),
      Plot.ruleX([0], { stroke: 'var(--edge)' }),
    ],
  }) as SVGSVGElement;
}

/** An estimate of a small share can fall below zero; a share cannot. */
function clipped(value: number | null): number | null {
  return value === null ? null : Math.max(0, value);
}

/** Where it stands in the picture, which ends at all of the variance. */
function drawn(value: number | null): number {
  return Math.min(1, clipped(value) ?? 0);
}

function barKey(measure: Bar['measure']): SVGElement {
  const { colour, opacity } = LOOK[measure];
  return svg`<svg viewBox="0 0 52 22"><rect x="3" y="5" width="46" height="12" fill=${colour} fill-opacity=${opacity} stroke=${colour}></rect><line x1="34" x2="50" y1="11" y2="11" stroke="var(--ink)" stroke-width="1.5"></line></svg>`;
}

/** An estimate from few rows can come out above all of the variance, which no share can. */
function shareText(value: number | null): string {
  return value !== null && value >= NEARLY_ALL ? 'nearly all' : percent(clipped(value));
}
const NEARLY_ALL = 0.95;

function interval({ low, high }: Estimate): string {
  if (low === null || high === null) return '';
  const limit = (value: number) => percent(Math.min(1, Math.max(0, value)));
  return `${limit(low)}\u00a0to\u00a0${limit(high)}`;
}

const LEAST_TOLD = 0.01;

/** What a total share's interval does not tell from the first one's. */
function notToldApart(first: InputMatters, others: readonly InputMatters[]): InputMatters[] {
  const { low, high } = first.total;
  if (low === null || high === null) return [];
  return others.filter(
    ({ total }) =>
      total.low !== null &&
      total.high !== null &&
      (total.value ?? 0) > LEAST_TOLD &&
      total.low <= high &&
      low <= total.high,
  );
}

/** What the chart shows, in a sentence without its full stop. */
export function sharesFinding({
  inputs: [first, ...others],
  togetherFraction,
}: Pick<Matters, 'inputs' | 'togetherFraction'>): string {
  const second = others[0];
  if (!first || (first.total.value ?? 0) <= 0) return 'Nothing that is not known here moves the days';
  const share = ({ title, total }: InputMatters) =>
    `${title.toLowerCase()} (${shareText(total.value)}${(total.value ?? 0) >= NEARLY_ALL ? ' of it' : ''})`;
  const next = second && (second.total.value ?? 0) > LEAST_TOLD ? `, then ${share(second)}` : '';
  const together =
    togetherFraction !== null && togetherFraction > 0.3 ? '; much of it only together with others' : '';
  const level = notToldApart(first, others);
  if (level.length > 0) {
    const more = level.length > 2 ? ` and ${level.length - 2} more` : '';
    return `What moves the days most cannot be ranked: the intervals of ${[first, ...level.slice(0, 2)].map(share).join(', ')}${more} overlap${together}`;
  }
  return `Most of the scatter of the days has to do with ${share(first)}${next}${together}`;
}

function sentence({ title, firstOrder, total }: InputMatters): string {
  return `${title}: ${shareText(firstOrder.value)} alone (${interval(firstOrder)}), ${shareText(total.value)} in all (${interval(total)}).`;
}

function togetherSentence({ togetherFraction, hiddenFraction }: Matters): string[] {
  const together =
    togetherFraction === null || togetherFraction <= 0
      ? []
      : [
          `${percent(Math.min(1, togetherFraction))} of the variance belongs to no input alone: it takes two or more together.`,
        ];
  const hidden =
    hiddenFraction === 0
      ? []
      : [
          `${percent(hiddenFraction)} of these outages last to the end of the simulation; what lies past it does not count here.`,
        ];
  return [...together, ...hidden];
}
