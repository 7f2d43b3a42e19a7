/**
 * What each alternative does to each strategy: days that nine outages in ten reach, with intervals.
 *
 * Observable Plot, because this is a small table laid out as facets (a strip per strategy, a line per alternative)
 * with a dot, a bar and a number on each line: a few marks on plain rows, drawn at once without a compiler.
 */
import * as Plot from '@observablehq/plot';
import {
  intervalText,
  limitCells,
  reachCell,
  reachText,
  type StrategySummary,
  type StudySummary,
} from '@rideout/sim';
import { cellColumns } from './cell-columns.ts';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { bestAndFirst, shownStrategies } from './nine-in-ten-words.ts';
import { tooFewEnding } from './outage-count.ts';
import { intervalKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';
import { timeAxis } from './time-axis.ts';

export interface WhatChangesOptions {
  /** Strategies shown; left out: all. */
  readonly strategyIds?: readonly string[] | undefined;
  /** Picture width, px. */
  readonly width: number;
}

/** One line of a strip: a dot, a bar, a figure. */
export interface StripLine {
  readonly style: SeriesStyle;
  /** Which strip, and the name that stands over it. */
  readonly strategy: string;
  readonly stripName: string;
  /** Which line of the strip, and what it is called in the key. */
  readonly alternative: string;
  readonly name: string;
  /** Days; the horizon where it hides them. */
  readonly days: number;
  readonly low: number;
  readonly high: number;
  readonly beyond: boolean;
  /** As it stands beside the bar. */
  readonly text: string;
}

export interface Line extends StripLine {
  readonly summary: StrategySummary;
}

const NAME_PX = 30; // room for a strategy's name above its lines
const LINE_PX = 22;

export function whatChanges(study: StudySummary, { strategyIds, width }: WhatChangesOptions): HTMLElement {
  const { horizonDays, provenance } = study;
  const lines = linesOf(study, strategyIds);
  const alternatives = oneOfEach(lines, (line) => line.alternative);
  return chartFrame({
    id: 'what-changes',
    title: finding(study, strategyIds),
    note: 'Time that nine outages in ten reach, for each strategy and household. Bars: 95\u00a0% interval. An arrow: as long as was simulated, or longer.',
    picture: strips(lines, horizonDays, width),
    key: alternatives.map(({ style, summary }) => ({
      sample: intervalKey(style),
      text: summary.alternativeTitle,
    })),
    sentences: lines.map(({ summary }) => lineSentence(summary, horizonDays)),
    table: linesTable(lines, horizonDays),
    provenance,
  });
}

export function linesOf(study: StudySummary, strategyIds: readonly string[] | undefined): Line[] {
  const alternatives = [...new Set(study.strategies.map((s) => s.alternativeId))];
  const within = (days: number | null) => days ?? study.horizonDays;
  return study.strategies
    .filter((s) => !strategyIds || strategyIds.includes(s.strategyId))
    .map((summary) => ({
      summary,
      style: seriesStyle(alternatives.indexOf(summary.alternativeId)),
      strategy: summary.strategyId,
      stripName: summary.strategyTitle,
      alternative: summary.alternativeId,
      name: summary.alternativeTitle,
      days: within(summary.nineInTenDays.value),
      low: within(summary.nineInTenDays.low),
      high: within(summary.nineInTenDays.high),
      beyond: summary.nineInTenDays.value === null,
      text: reachText(summary.nineInTenDays.value, study.horizonDays),
    }));
}

function oneOfEach<L extends StripLine>(lines: readonly L[], what: (line: L) => string): L[] {
  return lines.filter((line, i) => lines.findIndex((other) => what(other) === what(line)) === i);
}

export function strips(lines: readonly StripLine[], horizonDays: number, width: number): SVGSVGElement {
  const strategies = oneOfEach(lines, (line) => line.strategy);
  const alternatives = oneOfEach(lines, (line) => line.alternative);
  const lastDay = Math.min(horizonDays, Math.max(...lines.map((l) => l.high), 0.25) * 1.05);
  const { word, perDay } = timeAxis(lastDay);
  const time = (of: 'days' | 'low' | 'high') => (line: StripLine) => line[of] * perDay;
  const onLine = { fy: 'strategy', y: 'alternative' } as const;
  const colour = (line: StripLine) => line.style.colour;
  return Plot.plot({
    width,
    height: 46 + strategies.length * (NAME_PX + LINE_PX * alternatives.length),
    marginLeft: 14,
    marginRight: lines.some((line) => line.high >= horizonDays) ? 124 : 76, // "14 days or more"
    marginTop: 6,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      domain: [0, lastDay * perDay],
      label: `${word} that nine outages in ten reach`,
      labelArrow: 'none',
      labelAnchor: 'center',
      grid: true,
      ticks: Math.max(2, width / 90),
      insetLeft: 4,
    },
    y: { axis: null, domain: alternatives.map((l) => l.alternative), insetTop: NAME_PX - 6, padding: 0.5 },
    fy: { axis: null, domain: strategies.map((l) => l.strategy), padding: 0 },
    symbol: { type: 'identity' },
    marks: [
      Plot.ruleX([0], { stroke: 'var(--edge)' }),
      Plot.text(strategies, {
        ...STRIP_NAME,
        lineWidth: width / 13,
        text: (l: StripLine) => l.stripName,
      }),
      Plot.link(lines, { ...onLine, ...BAR, x1: time('low'), x2: time('high'), stroke: colour }),
      Plot.dot(lines, {
        ...onLine,
        ...DOT,
        x: time('days'),
        fill: colour,
        filter: (l: StripLine) => !l.beyond,
      }),
      Plot.text(lines, {
        ...onLine,
        x: time('days'),
        text: () => '▶',
        fill: colour,
        filter: (l: StripLine) => l.beyond,
      }),
      Plot.text(lines, { ...onLine, ...FIGURE, x: time('high'), text: 'text' }),
    ],
  }) as SVGSVGElement;
}

export const PLOT_STYLE = {
  background: 'transparent',
  color: 'var(--ink)',
  fontFamily: 'system-ui, sans-serif',
  fontSize: '13px',
  overflow: 'visible',
};
export const STRIP_NAME = {
  fy: 'strategy',
  frameAnchor: 'top-left',
  dy: 12,
  dx: 10,
  textAnchor: 'start',
  fontWeight: 650,
  textOverflow: 'ellipsis',
} as const;
const BAR = {
  y1: 'alternative',
  y2: 'alternative',
  strokeWidth: 7,
  strokeOpacity: 0.35,
  strokeLinecap: 'butt',
} as const;
const DOT = { r: 5.5, stroke: 'var(--paper)', symbol: (line: StripLine) => line.style.marker };
const FIGURE = {
  dx: 10,
  textAnchor: 'start',
  fill: 'var(--ink)',
  stroke: 'var(--paper)',
  strokeWidth: 4,
} as const;

/** What the best alternative gives the strategy that lasts longest in the first. */
function finding(study: StudySummary, strategyIds: readonly string[] | undefined): string {
  const alternativeId = study.strategies[0]?.alternativeId ?? '';
  const { best } = bestAndFirst(shownStrategies(study, { alternativeId, strategyIds }));
  if (!best) return 'No strategy is chosen';
  const reach = (s: StrategySummary) =>
    `${reachText(s.nineInTenDays.value, study.horizonDays)} with “${s.alternativeTitle}”`;
  const others = study.strategies.filter((s) => s.strategyId === best.strategyId && s !== best);
  const top = bestAndFirst(others).best;
  return `“${best.strategyTitle}”: nine outages in ten reach ${reach(best)}${top ? `, ${reach(top)}` : ''}${tooFewEnding(best.draws)}`;
}

function lineSentence(s: StrategySummary, horizonDays: number): string {
  return `${s.strategyTitle}, ${s.alternativeTitle}: ${reachText(s.nineInTenDays.value, horizonDays)} (${intervalText(s.nineInTenDays, horizonDays)}).`;
}

function linesTable(lines: readonly Line[], horizonDays: number): DataTable {
  const number = true;
  return {
    caption: 'Time that nine outages in ten reach, with 95 % intervals.',
    columns: [
      { name: 'Strategy' },
      { name: 'Household' },
      { name: 'Reached', number },
      { name: 'From', number },
      { name: 'To', number },
    ],
    rows: lines.map(({ summary: { strategyTitle, alternativeTitle, nineInTenDays: n } }) => [
      strategyTitle,
      alternativeTitle,
      reachCell(n.value, horizonDays),
      limitCells(n, horizonDays).low,
      limitCells(n, horizonDays).high,
    ]),
    exact: lines.map(({ summary: s }) => ({
      ...cellColumns(s),
      nineInTenDays: s.nineInTenDays.value,
      low: s.nineInTenDays.low,
      high: s.nineInTenDays.high,
    })),
  };
}
