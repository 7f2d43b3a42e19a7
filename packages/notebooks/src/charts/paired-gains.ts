/**
 * What one alternative gains over the first, strategy by strategy, over the very same outages.
 *
 * Observable Plot: a dot, a bar and a figure on each plain row about a zero line, drawn at once without a compiler.
 */
import * as Plot from '@observablehq/plot';
import { gainCells, gainInterval, type StudySummary } from '@rideout/sim';
import { comparison, verdictOf, type Comparison } from './alternatives-comparison.ts';
import { cellColumns } from './cell-columns.ts';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { gainSentence, gainText } from './gain-words.ts';
import { tooFewEnding } from './outage-count.ts';
import { intervalKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';
import { timeAxis } from './time-axis.ts';
import { LINE_PX, wrapped } from './wrapped-text.ts';

export interface PairedGainsOptions {
  /** Compared with the first alternative. */
  readonly alternativeId: string;
  /** The strategy that the reader chose: named in the finding. */
  readonly strategyId: string;
  /** Picture width, px. */
  readonly width: number;
}

const ROW_PX = 54;
const CHOSEN = seriesStyle(0);
const OTHER: SeriesStyle = { ...seriesStyle(5), marker: 'square' }; // told apart by more than colour

export function pairedGains(study: StudySummary, options: PairedGainsOptions): HTMLElement {
  const { alternativeId, strategyId, width } = options;
  const strategies = [...new Set(study.strategies.map((s) => s.strategyId))];
  const rows = strategies.flatMap((id) => comparison(study, alternativeId, id) ?? []);
  const chosen = rows.find((row) => row.first.strategyId === strategyId);
  return chartFrame({
    id: 'paired-gains',
    title: chosen ? finding(chosen) : 'There is nothing to compare',
    note: 'Difference in the time that nine outages in ten reach, the same outages side by side; right of zero: longer. Bars: 95\u00a0% interval. An arrow: the simulated time hides the rest.',
    picture: picture(rows, strategyId, width),
    key: [
      { sample: intervalKey(CHOSEN), text: `The chosen strategy, “${chosen?.first.strategyTitle ?? ''}”` },
      ...(rows.length > 1 ? [{ sample: intervalKey(OTHER), text: 'The other strategies' }] : []),
    ],
    sentences: rows.map((row) => `“${row.first.strategyTitle}”: ${gainSentence(row)}`),
    table: table(rows),
    provenance: study.provenance,
  });
}

/** Positions on the axis; the ends of the drawn range stand for what is hidden beyond it. */
function picture(rows: readonly Comparison[], strategyId: string, width: number): SVGSVGElement {
  const known = rows.flatMap(({ gain: { nineInTenDays: n } }) => [n.low ?? 0, n.value ?? 0, n.high ?? 0]);
  const first = Math.min(0, ...known) * 1.05;
  const last = Math.max(0.1, ...known) * 1.05;
  const { word, perDay } = timeAxis(Math.max(last, -first));
  const days = (row: Comparison) => row.gain.nineInTenDays;
  const at = (value: number | null, hidden: number) => (value ?? hidden) * perDay;
  const colour = (row: Comparison) => styleOf(row, strategyId).colour;
  const y = (row: Comparison) => row.first.strategyId;
  const shown = rows.filter((row) => days(row).value !== null);
  const cut = rows.filter((row) => days(row).value === null || days(row).high === null);
  const names = rows.map((row) =>
    wrapped(`${row.first.strategyTitle}: ${gainText(row)}`, '600 13px system-ui, sans-serif', width - 28),
  );
  const abovePx = (Math.max(...names.map((lines) => lines.length)) - 1) * LINE_PX; // for more than one line
  const dy = 14 + abovePx / 2;
  return Plot.plot({
    width,
    height: 50 + rows.length * (ROW_PX + abovePx),
    marginLeft: 14,
    marginRight: 24,
    marginTop: 4,
    marginBottom: 40,
    style: STYLE,
    x: {
      domain: [first * perDay, last * perDay],
      label: `${word} gained`,
      labelArrow: 'none',
      labelAnchor: 'center',
      grid: true,
      ticks: Math.max(2, width / 90),
      insetLeft: 4,
    },
    y: { axis: null, domain: rows.map(y), padding: 0.5 },
    symbol: { type: 'identity' },
    marks: [
      Plot.ruleX([0], { stroke: 'var(--ink-soft)', strokeWidth: 1.5 }),
      Plot.text(rows, {
        ...NAME,
        y,
        dy: dy - 16,
        text: (row: Comparison) => names[rows.indexOf(row)]!.join('\n'),
      }),
      Plot.link(rows, {
        ...BAR,
        dy,
        x1: (row: Comparison) => at(days(row).low, first),
        x2: (row: Comparison) => at(days(row).high, last),
        y1: y,
        y2: y,
        stroke: colour,
      }),
      Plot.dot(shown, {
        ...DOT,
        dy,
        x: (row: Comparison) => at(days(row).value, last),
        y,
        fill: colour,
        symbol: (row: Comparison) => styleOf(row, strategyId).marker,
      }),
      Plot.text(cut, { x: last * perDay, y, dy, text: () => '▶', fill: colour }),
    ],
  }) as SVGSVGElement;
}

const STYLE = {
  background: 'transparent',
  color: 'var(--ink)',
  fontFamily: 'system-ui, sans-serif',
  fontSize: '13px',
  overflow: 'visible',
};
const NAME = {
  frameAnchor: 'left',
  dx: 10,
  lineAnchor: 'bottom',
  textAnchor: 'start',
  fontWeight: 600,
} as const;
const BAR = { strokeWidth: 7, strokeOpacity: 0.35, strokeLinecap: 'butt' } as const;
const DOT = { r: 5.5, stroke: 'var(--paper)' } as const;

function styleOf(row: Comparison, strategyId: string) {
  return row.first.strategyId === strategyId ? CHOSEN : OTHER;
}

function finding(chosen: Comparison): string {
  const { first, second } = chosen;
  const interval = gainInterval(chosen.gain.nineInTenDays);
  const against = `“${second.alternativeTitle}” against “${first.alternativeTitle}”`;
  const told =
    verdictOf(chosen) === 'hidden by the horizon'
      ? 'nine outages in ten last as long as was simulated with both'
      : `${gainText(chosen)} in nine outages in ten${interval ? ` (${interval})` : ''}`;
  return `${against}: ${told}${tooFewEnding(first.draws)}`;
}

function table(rows: readonly Comparison[]): DataTable {
  const number = true;
  return {
    caption:
      'Time gained, the same outages side by side, with 95 % intervals. “Hidden”: beyond the simulated time. The mean counts each outage up to the simulated time.',
    columns: [
      { name: 'Strategy' },
      { name: 'Nine in ten', number },
      { name: 'From', number },
      { name: 'To', number },
      { name: 'Mean', number },
      { name: 'From', number },
      { name: 'To', number },
    ],
    rows: rows.map(({ first, gain: { nineInTenDays: n, meanDays: m } }) => [
      first.strategyTitle,
      ...gainCells(n),
      ...gainCells(m),
    ]),
    exact: rows.map(({ first, second, gain: { nineInTenDays: n, meanDays: m, ...shares } }) => ({
      ...cellColumns(second),
      against: first.alternativeId,
      againstTitle: first.alternativeTitle,
      nineInTenDays: n.value,
      nineInTenLow: n.low,
      nineInTenHigh: n.high,
      meanDays: m.value,
      meanLow: m.low,
      meanHigh: m.high,
      longerFraction: shares.firstLongerFraction,
      shorterFraction: shares.secondLongerFraction,
    })),
  };
}
