/**
 * Through the year: month by what is changed, the days that nine outages in ten reach, a number in every cell.
 *
 * Vega-Lite, because a heat map is one table with a place, a shade and a text to each row, which is what a
 * specification says best; it turns on its side for a narrow page by swapping two channels.
 */
import { intervalCell, intervalText, listed, reachCell, reachText } from '@rideout/sim';
import type { ToldProvenance } from './changes-sentence.ts';
import { chartFrame, type ChartParts } from './chart-frame.ts';
import { svg } from '../elements.ts';
import { tooFewEnding, tooFewToTell } from './outage-count.ts';
import { drawn } from './survival-curves.ts';
import {
  bestAndWorst,
  monthsTold,
  whyNotYet,
  yearCells,
  type YearCell,
  type YearColumn,
  type YearMonth,
} from './year-cells.ts';
import { DEEPEST, heatMapSpec } from './year-heat-map-spec.ts';

export interface YearHeatMapOptions {
  readonly columns: readonly YearColumn[];
  /** What the columns count: "Battery modules on each unit". */
  readonly across: string;
  readonly strategyTitle: string;
  readonly horizonDays: number;
  /** Of the scenario whose months and columns these are; draws as planned. */
  readonly provenance: ToldProvenance;
  /** Picture width, px. */
  readonly width: number;
}

export async function yearHeatMap(
  months: readonly YearMonth[],
  options: YearHeatMapOptions,
): Promise<HTMLElement> {
  const { columns, across, strategyTitle, horizonDays, provenance, width } = options;
  const cells = yearCells(months, columns);
  const done = cells.filter((cell) => cell.days);
  const draws = Math.min(...done.map((cell) => cell.draws));
  const coarse = draws < provenance.draws || done.length < cells.length;
  return chartFrame({
    id: 'year-heat-map',
    title: yearFinding(cells, horizonDays),
    note: `Time that nine outages in ten reach (h hours, d days), by the month in which the outage begins, with “${strategyTitle}”. ${coarse ? `So far ${draws} outages in some months, of ${provenance.draws}; figures still move.` : `${draws} outages in each month.`}`,
    picture: await drawn(heatMapSpec(cells, { across, horizonDays, width })),
    key: heatKey(columns),
    sentences: columns.map((column) => columnSentence(cells, column, horizonDays)),
    table: {
      caption: `Days that nine outages in ten reach, with 95 % intervals. Columns: ${across.toLowerCase()}.`,
      columns: [{ name: 'Begins in' }, ...columns.map(({ label }) => ({ name: label, number: true }))],
      rows: months.map(({ title }) => [
        title,
        ...cells.filter((cell) => cell.month === title).map((cell) => figure(cell, horizonDays)),
      ]),
      exact: cells.map(({ month, column, days, draws: n }) => ({
        month,
        column: column.id,
        draws: n,
        nineInTenDays: days?.value ?? null,
        low: days?.low ?? null,
        high: days?.high ?? null,
      })),
    },
    provenance: { ...provenance, draws },
  });
}

/** The household as it is, or the first column where none is. */
export function ownCells(cells: readonly YearCell[]): YearCell[] {
  const own = cells.find((cell) => cell.column.own)?.column ?? cells[0]?.column;
  return cells.filter((cell) => cell.column === own);
}

export function yearFinding(cells: readonly YearCell[], horizonDays: number): string {
  const own = ownCells(cells);
  if (!own.some((cell) => cell.days)) return 'The year is being worked out';
  return `With ${own[0]!.column.words}: ${titleFinding(own, horizonDays)}`;
}

/** Where no figure can be told from so few, a title ends as other titles do, and does not say so twice. */
function titleFinding(own: readonly YearCell[], horizonDays: number): string {
  const { draws } = own[0]!;
  if (monthsTold(own) === 'not yet' || !tooFewToTell(draws)) return columnFinding(own, horizonDays);
  return `${rangeText(own, horizonDays)}, by month${tooFewEnding(draws)}`;
}

/** "10 hours in August, 2.4 days in May"; or that months cannot be compared, cannot be told apart, or hardly differ. */
export function columnFinding(cells: readonly YearCell[], horizonDays: number): string {
  const told = monthsTold(cells);
  if (told === 'not yet') return `the months cannot be compared yet, ${whyNotYet(cells)}`;
  if (told === 'too few')
    return `too few outages to tell the months apart (${rangeText(cells, horizonDays)})`;
  const { best, worst } = bestAndWorst(cells);
  const [most, least] = [best, worst].map(([cell]) => reachText(cell!.days!.value, horizonDays));
  if (most === least) return `${most} in every month`;
  const extremes = `${least} in ${monthsOf(worst)}, ${most} in ${monthsOf(best)}`;
  return told === 'apart' ? extremes : `months hardly differ (${extremes})`;
}

/** "10 hours to 2.4 days", from the shortest month to the longest. */
export function rangeText(cells: readonly YearCell[], horizonDays: number): string {
  const { best, worst } = bestAndWorst(cells);
  const [least, most] = [worst, best].map(([cell]) => reachText(cell!.days!.value, horizonDays));
  return least === most ? least! : `${least} to ${most}`;
}

export function monthsOf(cells: readonly YearCell[]): string {
  return listed(cells.map((cell) => cell.month));
}

function columnSentence(cells: readonly YearCell[], column: YearColumn, horizonDays: number): string {
  const told = cells
    .filter((cell) => cell.column === column && cell.days)
    .map(({ month, days }) => `${month} ${reachText(days!.value, horizonDays)}`);
  const words = column.words.charAt(0).toUpperCase() + column.words.slice(1);
  return `${words}: ${told.join(', ')}.`;
}

function figure({ days }: YearCell, horizonDays: number): string {
  if (!days) return '…';
  const interval = intervalCell(days, horizonDays);
  return `${reachCell(days.value, horizonDays)}${interval ? ` (${interval})` : ''}`;
}

/** Interval of a cell in words, for the headline. */
export function cellInterval({ days }: YearCell, horizonDays: number): string {
  return days ? intervalText(days, horizonDays) : '';
}

function heatKey(columns: readonly YearColumn[]): ChartParts['key'] {
  const shaded = (opacity: number, stroke: string) =>
    svg`<svg viewBox="0 0 52 22"><rect x="6" y="3" width="40" height="16" rx="2" fill="var(--series-1)" fill-opacity=${opacity} stroke=${stroke} stroke-width="1.5"></rect></svg>`;
  const own = columns.find((column) => column.own);
  return [
    {
      sample: shaded(DEEPEST, 'none'),
      text: 'The stronger the colour, the longer; the number says how long.',
    },
    ...(own
      ? [
          {
            sample: shaded(0, 'var(--ink)'),
            text: `Outlined: the household as it is in its file (${own.words}).`,
          },
        ]
      : []),
  ];
}
