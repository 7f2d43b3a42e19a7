/**
 * What each alternative does to each strategy: days that nine outages in ten reach, with intervals.
 *
 * Observable Plot, because this is a small table laid out as facets (a strip per strategy, a line per alternative)
 * with a dot, a bar and a number on each line: a few marks on plain rows, drawn at once without a compiler.
 */
import * as Plot from '@observablehq/plot';
import { daysDown, daysUp, type StrategySummary, type StudySummary } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { bestAndFirst, shownStrategies } from './nine-in-ten-words.ts';
import { intervalText, reachText } from './reach-text.ts';
import { intervalKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';

export interface WhatChangesOptions {
  /** Strategies shown; left out: all. */
  readonly strategyIds?: readonly string[] | undefined;
  /** Picture width, px. */
  readonly width: number;
}

interface Line {
  readonly summary: StrategySummary;
  readonly style: SeriesStyle;
  readonly strategy: string;
  readonly alternative: string;
  readonly days: number;
  readonly low: number;
  readonly high: number;
  readonly beyond: boolean;
  readonly label: string;
}

const NAME_PX = 30; // room for a strategy's name above its lines
const LINE_PX = 22;

export function whatChanges(study: StudySummary, { strategyIds, width }: WhatChangesOptions): HTMLElement {
  const lines = linesOf(study, strategyIds);
  return chartFrame({
    id: 'what-changes',
    title: finding(study, strategyIds),
    note: 'Days that nine outages in ten reach. Bars: 95 % interval. An arrow: as long as was simulated, or longer.',
    picture: strips(lines, study.horizonDays, width),
    key: firstOfEach(lines).map(({ style, alternative }) => ({
      sample: intervalKey(style),
      text: alternative,
    })),
    sentences: lines.map(({ summary }) => lineSentence(summary, study.horizonDays)),
    table: linesTable(lines, study.horizonDays),
    provenance: study.provenance,
  });
}

function linesOf(study: StudySummary, strategyIds: readonly string[] | undefined): Line[] {
  const alternatives = [...new Set(study.strategies.map((s) => s.alternativeId))];
  const within = (days: number | null) => days ?? study.horizonDays;
  return study.strategies
    .filter((s) => !strategyIds || strategyIds.includes(s.strategyId))
    .map((summary) => ({
      summary,
      style: seriesStyle(alternatives.indexOf(summary.alternativeId)),
      strategy: summary.strategyTitle,
      alternative: summary.alternativeTitle,
      days: within(summary.nineInTenDays.value),
      low: within(summary.nineInTenDays.low),
      high: within(summary.nineInTenDays.high),
      beyond: summary.nineInTenDays.value === null,
      label: daysDown(summary.nineInTenDays.value, study.horizonDays),
    }));
}

/** One line of each alternative. */
function firstOfEach(lines: readonly Line[]): Line[] {
  return lines.filter(
    (line, i) =>
      lines.findIndex((other) => other.style === line.style || other.alternative === line.alternative) === i,
  );
}

function strips(lines: readonly Line[], horizonDays: number, width: number): SVGSVGElement {
  const strategies = [...new Set(lines.map((l) => l.strategy))];
  const alternatives = [...new Set(lines.map((l) => l.alternative))];
  const most = Math.max(...lines.map((l) => l.high), 0.5);
  const onLine = { fy: 'strategy', y: 'alternative' } as const;
  const style = (line: Line) => line.style.colour;
  const plot = Plot.plot({
    width,
    height: 46 + strategies.length * (NAME_PX + LINE_PX * alternatives.length),
    marginLeft: 14,
    marginRight: 48,
    marginTop: 6,
    marginBottom: 40,
    style: {
      background: 'transparent',
      color: 'var(--ink)',
      fontFamily: 'system-ui, sans-serif',
      fontSize: '13px',
      overflow: 'visible',
    },
    x: {
      domain: [0, Math.min(horizonDays, most * 1.05)],
      label: 'Days nine outages in ten reach',
      labelArrow: 'none',
      labelAnchor: 'center',
      grid: true,
      ticks: Math.max(2, width / 90),
      insetLeft: 4,
    },
    y: { axis: null, domain: alternatives, insetTop: NAME_PX - 6, padding: 0.5 },
    fy: { axis: null, domain: strategies, padding: 0 },
    symbol: { type: 'identity' },
    marks: [
      Plot.ruleX([0], { stroke: 'var(--edge)' }),
      Plot.text(strategies, {
        fy: (s: string) => s,
        frameAnchor: 'top-left',
        dy: 12,
        dx: 4,
        textAnchor: 'start',
        fontWeight: 650,
        text: (s: string) => s,
        textOverflow: 'ellipsis',
        lineWidth: width / 13,
      }),
      Plot.link(lines, {
        ...onLine,
        x1: 'low',
        x2: 'high',
        y1: 'alternative',
        y2: 'alternative',
        stroke: style,
        strokeWidth: 7,
        strokeOpacity: 0.35,
        strokeLinecap: 'butt',
      }),
      Plot.dot(lines, {
        ...onLine,
        x: 'days',
        r: 5.5,
        fill: style,
        stroke: 'var(--paper)',
        symbol: (l: Line) => l.style.marker,
        filter: (l: Line) => !l.beyond,
      }),
      Plot.text(lines, { ...onLine, x: 'days', text: () => '▶', fill: style, filter: (l: Line) => l.beyond }),
      Plot.text(lines, {
        ...onLine,
        x: 'high',
        text: 'label',
        dx: 10,
        textAnchor: 'start',
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
      }),
    ],
  });
  return plot as SVGSVGElement;
}

/** What the best alternative gives the strategy that lasts longest in the first. */
function finding(study: StudySummary, strategyIds: readonly string[] | undefined): string {
  const alternativeId = study.strategies[0]?.alternativeId ?? '';
  const { best } = bestAndFirst(shownStrategies(study, { alternativeId, strategyIds }));
  if (!best) return 'No strategy is chosen';
  const reach = (s: StrategySummary) =>
    `${reachText(s.nineInTenDays.value, study.horizonDays)} with “${s.alternativeTitle}”`;
  const others = study.strategies.filter((s) => s.strategyId === best.strategyId && s !== best);
  const top = bestAndFirst(others).best;
  return `“${best.strategyTitle}”: nine outages in ten reach ${reach(best)}${top ? `, ${reach(top)}` : ''}`;
}

function lineSentence(s: StrategySummary, horizonDays: number): string {
  return `${s.strategyTitle}, ${s.alternativeTitle}: ${reachText(s.nineInTenDays.value, horizonDays)} (${intervalText(s.nineInTenDays, horizonDays)}).`;
}

function linesTable(lines: readonly Line[], horizonDays: number): DataTable {
  const number = true;
  return {
    caption: 'Days that nine outages in ten reach, with 95 % intervals.',
    columns: [
      { name: 'Strategy' },
      { name: 'Household' },
      { name: 'Days', number },
      { name: 'From', number },
      { name: 'To', number },
    ],
    rows: lines.map(({ summary: { strategyTitle, alternativeTitle, nineInTenDays: n } }) => [
      strategyTitle,
      alternativeTitle,
      daysDown(n.value, horizonDays),
      daysDown(n.low, horizonDays),
      daysUp(n.high, horizonDays),
    ]),
    exact: lines.map(({ summary: s }) => ({
      alternative: s.alternativeId,
      strategy: s.strategyId,
      strategyTitle: s.strategyTitle,
      nineInTenDays: s.nineInTenDays.value,
      low: s.nineInTenDays.low,
      high: s.nineInTenDays.high,
    })),
  };
}
