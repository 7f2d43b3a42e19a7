/**
 * What each strategy asks of the people: hours in which a need goes unmet, and circuits switched.
 *
 * Observable Plot, because this is two bars on each of a few rows, each with its figure on it.
 */
import * as Plot from '@observablehq/plot';
import type { StrategySummary, StudySummary } from '@rideout/sim';
import { cellColumns } from './cell-columns.ts';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { unmetHours } from './need-endurance.ts';
import { alternativeShown, shownStrategies, type Shown } from './nine-in-ten-words.ts';
import { barKey } from './series-key.ts';
import { PLOT_STYLE, STRIP_NAME } from './what-changes.ts';

export interface InconvenienceOptions extends Shown {
  /** Picture width, px. */
  readonly width: number;
}

interface Burden {
  readonly summary: StrategySummary;
  readonly strategy: string;
  readonly measure: 'unmet' | 'throws';
  readonly words: string;
  /** Of the greatest on the chart. */
  readonly share: number;
}

const NAME_PX = 30;
const LINE_PX = 40;

export function inconvenience(study: StudySummary, options: InconvenienceOptions): HTMLElement {
  const strategies = shownStrategies(study, options);
  const { horizonDays } = study;
  return chartFrame({
    id: 'inconvenience',
    title: finding(strategies, horizonDays),
    note: `In a mean outage of ${horizonDays} days. Hours in which a need goes unmet (two needs unmet for an hour count as two hours), and circuits switched off or on, by hand or by the switch. Each kind of bar has its own scale.`,
    picture: bars(strategies, horizonDays, options.width),
    key: [
      { sample: barKey(LOOK.unmet), text: 'hours that needs go unmet, in an outage' },
      { sample: barKey(LOOK.throws), text: 'circuits switched, in a day' },
    ],
    sentences: strategies.map((s) => sentence(s, horizonDays)),
    table: burdenTable(strategies, horizonDays),
    provenance: study.provenance,
    alternative: alternativeShown(study.strategies, options),
  });
}

/** Circuits switched in a day, mean over outages. */
export function throwsPerDay({ meanByColumn }: StrategySummary, horizonDays: number): number {
  return (meanByColumn['switchThrows'] ?? 0) / horizonDays;
}

function bars(strategies: readonly StrategySummary[], horizonDays: number, width: number): SVGSVGElement {
  const most = (of: (s: StrategySummary) => number) => Math.max(...strategies.map(of), 1e-9);
  const throws = (s: StrategySummary) => throwsPerDay(s, horizonDays);
  const [mostUnmet, mostThrows] = [most(unmetHours), most(throws)];
  const burdens = strategies.flatMap((summary): Burden[] => [
    {
      summary,
      strategy: summary.strategyId,
      measure: 'unmet',
      words: unmetWords(summary),
      share: unmetHours(summary) / mostUnmet,
    },
    {
      summary,
      strategy: summary.strategyId,
      measure: 'throws',
      words: throwsWords(summary, horizonDays),
      share: throws(summary) / mostThrows,
    },
  ]);
  const onLine = { fy: 'strategy', y: 'measure' } as const;
  return Plot.plot({
    width,
    height: 10 + strategies.length * (NAME_PX + 2 * LINE_PX),
    marginLeft: 2,
    marginRight: 8,
    marginTop: 4,
    marginBottom: 4,
    style: PLOT_STYLE,
    x: { domain: [0, 1], axis: null },
    y: { axis: null, domain: ['unmet', 'throws'], insetTop: NAME_PX, padding: 0 },
    fy: { axis: null, domain: strategies.map((s) => s.strategyId), padding: 0 },
    marks: [
      Plot.text(
        burdens.filter((b) => b.measure === 'unmet'),
        { ...STRIP_NAME, dx: 2, lineWidth: width / 13, text: (b: Burden) => b.summary.strategyTitle },
      ),
      Plot.text(burdens, {
        ...onLine,
        x: 0,
        dx: 2,
        dy: -9,
        textAnchor: 'start',
        text: 'words',
        fill: 'var(--ink)',
      }),
      Plot.barX(burdens, {
        ...onLine,
        x1: 0,
        x2: 'share',
        insetTop: 20,
        insetBottom: 8,
        fill: (b: Burden) => LOOK[b.measure].colour,
        fillOpacity: (b: Burden) => LOOK[b.measure].opacity,
        stroke: (b: Burden) => LOOK[b.measure].colour,
      }),
    ],
  }) as SVGSVGElement;
}

/** Filled and outlined: told apart without colour. */
const LOOK = {
  unmet: { colour: 'var(--series-2)', opacity: 1 },
  throws: { colour: 'var(--series-4)', opacity: 0.2 },
} as const;

function unmetWords(s: StrategySummary): string {
  const hours = unmetHours(s);
  if (hours === 0) return 'no need goes unmet';
  return hours < 1 ? `${Math.ceil(hours * 60)}\u00a0minutes unmet` : `${shortly(hours)}\u00a0hours unmet`;
}

function throwsWords(s: StrategySummary, horizonDays: number): string {
  const perDay = throwsPerDay(s, horizonDays);
  return perDay === 0 ? 'nothing to switch' : `${shortly(perDay)} circuits switched a day`;
}

function shortly(value: number): string {
  return value < 10 ? value.toFixed(1) : String(Math.round(value));
}

function finding(strategies: readonly StrategySummary[], horizonDays: number): string {
  const [least] = [...strategies].sort((a, b) => unmetHours(a) - unmetHours(b));
  const [easiest] = [...strategies].sort(
    (a, b) => throwsPerDay(a, horizonDays) - throwsPerDay(b, horizonDays) || unmetHours(a) - unmetHours(b),
  );
  if (!least || !easiest) return 'No strategy is chosen';
  const words = (s: StrategySummary) =>
    `“${s.strategyTitle}”: ${unmetWords(s)}, ${throwsWords(s, horizonDays)}`;
  if (least === easiest) return `Least trouble by both measures is ${words(least)}`;
  return `Needs go unmet least with ${words(least)}; the least to do is with ${words(easiest)}`;
}

function sentence(s: StrategySummary, horizonDays: number): string {
  const each = s.needs
    .filter((need) => need.meanMinutesUnmet > 0)
    .map((need) => `${need.need} ${shortly(need.meanMinutesUnmet / 60)}\u00a0h`);
  return `${s.strategyTitle}: ${unmetWords(s)}${each.length ? ` (${each.join(', ')})` : ''}; ${throwsWords(s, horizonDays)}.`;
}

function burdenTable(strategies: readonly StrategySummary[], horizonDays: number): DataTable {
  const number = true;
  const needs = strategies[0]?.needs.map((n) => n.need) ?? [];
  return {
    caption:
      'Means over outages, to the end of the simulation: minutes that each need goes unmet; circuits switched.',
    columns: [
      { name: 'Strategy' },
      ...needs.map((need) => ({ name: `${need} (min)`, number })),
      { name: 'Circuits switched', number },
      { name: 'a day', number },
    ],
    rows: strategies.map((s) => [
      s.strategyTitle,
      ...s.needs.map((need) => need.meanMinutesUnmet.toFixed(0)),
      (s.meanByColumn['switchThrows'] ?? 0).toFixed(1),
      throwsPerDay(s, horizonDays).toFixed(1),
    ]),
    exact: strategies.map((s) => ({
      ...cellColumns(s),
      ...Object.fromEntries(s.needs.map((need) => [`${need.need}MinutesUnmet`, need.meanMinutesUnmet])),
      switchThrows: s.meanByColumn['switchThrows'] ?? null,
    })),
  };
}
