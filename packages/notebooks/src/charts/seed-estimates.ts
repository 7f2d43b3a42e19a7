/**
 * The same question asked with several seeds: each answer with its interval, and all of them together.
 *
 * Observable Plot: a dot, a bar and a figure on each plain row about one line.
 */
import * as Plot from '@observablehq/plot';
import {
  gainLength,
  intervalCell,
  reachCell,
  reachText,
  seedSpread,
  type SeedSpread,
  type StrategySummary,
} from '@rideout/sim';
import { svg } from '../elements.ts';
import type { ToldProvenance } from './changes-sentence.ts';
import { chartFrame } from './chart-frame.ts';
import { intervalKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';
import { timeAxis } from './time-axis.ts';
import { roomAround } from './room-around.ts';
import { PLOT_STYLE } from './what-changes.ts';
import { LINE_PX, textWidth, wrapped } from './wrapped-text.ts';

export interface SeedAnswer {
  readonly seed: string;
  readonly summary: StrategySummary;
}

export interface SeedEstimatesOptions {
  readonly horizonDays: number;
  readonly provenance: ToldProvenance | string;
  /** Picture width, px. */
  readonly width: number;
}

const ROW_PX = 30;
const NAME_PX = 108;
const NAME_FONT = '400 13px system-ui, sans-serif';
const OWN = seriesStyle(0);
const OTHER = { ...seriesStyle(5), marker: 'square' } as const; // told apart by more than colour

/** The first answer is the page's own. */
export function seedEstimates(answers: readonly SeedAnswer[], options: SeedEstimatesOptions): HTMLElement {
  const { horizonDays, provenance } = options;
  const spread = seedSpread(answers.map(({ summary }) => summary));
  const { strategyTitle, alternativeTitle, draws } = answers[0]!.summary;
  return chartFrame({
    id: 'seed-estimates',
    title: finding(answers, spread, horizonDays),
    note: `Time that nine outages in ten reach with “${strategyTitle}”, ${alternativeTitle}, from ${draws} outages for each seed. Bars: the 95\u00a0% interval that each states by itself. Upright line: all seeds together.`,
    picture: picture(answers, spread, options),
    key: [
      { sample: intervalKey(OWN), text: `This page’s seed, “${answers[0]!.seed}”` },
      ...(answers.length > 1 ? [{ sample: intervalKey(OTHER), text: 'Other seeds' }] : []),
      {
        sample: togetherKey(),
        text: `All ${answers.length * draws} outages together: ${reachText(spread.togetherDays, horizonDays)}`,
      },
    ],
    sentences: spreadSentences(answers, spread),
    table: {
      caption:
        'Time that nine outages in ten reach, rounded down, for each seed, with the 95 % interval it states.',
      columns: [
        { name: 'Seed' },
        { name: 'Reached', number: true },
        { name: '95 % interval', number: true },
        { name: 'Holds the line', number: true },
      ],
      rows: answers.map(({ seed, summary: { nineInTenDays: n } }) => [
        seed,
        reachCell(n.value, horizonDays),
        intervalCell(n, horizonDays),
        inside(n, spread.togetherDays) ? 'yes' : 'no',
      ]),
      exact: answers.map(({ seed, summary: { nineInTenDays: n, medianDays: m, draws: of } }) => ({
        seed,
        draws: of,
        nineInTenDays: n.value,
        low: n.low,
        high: n.high,
        medianDays: m.value,
      })),
    },
    provenance,
  });
}

interface Row {
  readonly seed: string;
  readonly style: { readonly colour: string; readonly marker: string };
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly beyond: boolean;
  readonly text: string;
}

function picture(
  answers: readonly SeedAnswer[],
  { togetherDays }: SeedSpread,
  { horizonDays, width }: SeedEstimatesOptions,
): SVGSVGElement {
  const within = (days: number | null) => days ?? horizonDays;
  const rows = answers.map(({ seed, summary: { nineInTenDays: n } }, i): Row => ({
    seed,
    style: i === 0 ? OWN : OTHER,
    value: within(n.value),
    low: within(n.low),
    high: within(n.high),
    beyond: n.value === null,
    text: reachText(n.value, horizonDays),
  }));
  const [first, last] = roomAround(
    [...rows.flatMap((row) => [row.low, row.high]), within(togetherDays)],
    horizonDays,
  );
  const { word, perDay } = timeAxis(last);
  const names = rows.map((row) => wrapped(row.seed, NAME_FONT, width - 30));
  const isLong = rows.some((row) => textWidth(row.seed, NAME_FONT) > NAME_PX - 8);
  const abovePx = isLong ? Math.max(...names.map((lines) => lines.length)) * LINE_PX : 0;
  const dy = abovePx / 2; // of the bar, where names stand above
  const time = (of: 'value' | 'low' | 'high') => (row: Row) => row[of] * perDay;
  const colour = (row: Row) => row.style.colour;
  return Plot.plot({
    width,
    height: 46 + rows.length * (ROW_PX + abovePx),
    marginLeft: isLong ? 14 : NAME_PX,
    marginRight: rows.some((row) => row.beyond) ? 124 : 76,
    marginTop: 4,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      domain: [first * perDay, last * perDay],
      label: `${word} that nine outages in ten reach`,
      labelArrow: 'none',
      labelAnchor: 'center',
      grid: true,
      ticks: Math.max(2, width / 110),
    },
    y: { axis: null, domain: rows.map((row) => row.seed), padding: 0.5 },
    symbol: { type: 'identity' },
    marks: [
      Plot.ruleX([within(togetherDays) * perDay], LINE),
      Plot.text(rows, {
        y: 'seed',
        frameAnchor: 'left',
        ...(isLong ? { dx: 4, dy: dy - 9, lineAnchor: 'bottom' as const } : { dx: -NAME_PX + 2 }),
        textAnchor: 'start',
        text: (row: Row) => (isLong ? names[rows.indexOf(row)]!.join('\n') : row.seed),
      }),
      Plot.link(rows, {
        x1: time('low'),
        x2: time('high'),
        y1: 'seed',
        y2: 'seed',
        dy,
        stroke: colour,
        strokeWidth: 7,
        strokeOpacity: 0.35,
        strokeLinecap: 'butt',
      }),
      Plot.dot(rows, {
        x: time('value'),
        y: 'seed',
        dy,
        r: 5.5,
        fill: colour,
        stroke: 'var(--paper)',
        symbol: (row: Row) => row.style.marker,
        filter: (row: Row) => !row.beyond,
      }),
      Plot.text(rows, {
        x: time('value'),
        y: 'seed',
        dy,
        text: () => '▶',
        fill: colour,
        filter: (r: Row) => r.beyond,
      }),
      Plot.text(rows, {
        x: time('high'),
        y: 'seed',
        dx: 10,
        dy,
        textAnchor: 'start',
        text: 'text',
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
      }),
    ],
  }) as SVGSVGElement;
}

const LINE = { stroke: 'var(--ink)', strokeWidth: 1.5, strokeDasharray: '5 3' } as const;

function togetherKey(): SVGElement {
  return svg`<svg viewBox="0 0 52 22"><line x1="26" x2="26" y1="0" y2="22" stroke="var(--ink)" stroke-width="1.5" stroke-dasharray="5 3"></line></svg>`;
}

function inside({ low, high }: StrategySummary['nineInTenDays'], days: number | null): boolean {
  const at = days ?? Infinity;
  return (low ?? Infinity) <= at && at <= (high ?? Infinity);
}

function finding(answers: readonly SeedAnswer[], spread: SeedSpread, horizonDays: number): string {
  const days = answers.map(({ summary }) => summary.nineInTenDays.value ?? Infinity);
  const reach = (value: number) => reachText(value === Infinity ? null : value, horizonDays);
  const [least, most] = [reach(Math.min(...days)), reach(Math.max(...days))];
  if (answers.length === 1) return `One seed says ${least}`;
  const said = least === most ? `all say ${least}` : `say between ${least} and ${most}`;
  return `${answers.length} seeds ${said}; ${spread.holding} of their ${answers.length} intervals hold what all together say, ${reachText(spread.togetherDays, horizonDays)}`;
}

/** The scatter between seeds beside what one study states of itself. */
export function spreadSentences(answers: readonly SeedAnswer[], spread: SeedSpread): string[] {
  const { spreadDays, statedDays, holding } = spread;
  const expected = `Of intervals that are right, about nineteen in twenty hold the true figure; here ${holding} of ${answers.length} hold that of all outages together.`;
  if (answers.length < 2) return [];
  if (spreadDays === null || statedDays === null)
    return [
      expected,
      'The end of the simulation hides some figures, so that the scatter cannot be put in days.',
    ];
  const known = Math.round(100 / Math.sqrt(2 * (answers.length - 1)));
  return [
    `Between seeds the figure scatters by ± ${gainLength(spreadDays)} (1.96 standard deviations, itself known to about ± ${known}\u00a0%); one study states ± ${gainLength(statedDays)} on average.`,
    expected,
  ];
}
