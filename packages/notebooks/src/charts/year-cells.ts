/** The year's heat map as cells: a month and one thing changed, the days that nine outages in ten reach. */
import { reachCell, type Estimate, type StudySummary } from '@rideout/sim';
import { LEAST_DAYS } from './alternatives-comparison.ts';
import { counted } from './counted.ts';
import { tooFewToTell } from './outage-count.ts';

/** One column of the year: the household with one thing changed. */
export interface YearColumn {
  readonly id: string;
  /** As it stands over the column: "2". */
  readonly label: string;
  /** As it stands in a sentence: "2 battery modules on each unit". */
  readonly words: string;
  /** The household as it is in its file. */
  readonly own: boolean;
}

export interface YearMonth {
  readonly title: string;
  /** Alternatives are the columns, by id. Undefined: not worked out yet. */
  readonly summary: StudySummary | undefined;
}

export interface YearCell {
  readonly month: string;
  readonly column: YearColumn;
  /** Undefined: not worked out yet. */
  readonly days: Estimate | undefined;
  readonly draws: number;
}

/** Month by month, each in the order of the columns. */
export function yearCells(months: readonly YearMonth[], columns: readonly YearColumn[]): YearCell[] {
  return months.flatMap(({ title, summary }) =>
    columns.map((column) => ({
      month: title,
      column,
      days: summary?.strategies.find((s) => s.alternativeId === column.id)?.nineInTenDays,
      draws: summary?.provenance.draws ?? 0,
    })),
  );
}

export interface BestAndWorst {
  readonly best: readonly YearCell[];
  readonly worst: readonly YearCell[];
}

/** Months of one column with the longest and the shortest days; several where the horizon makes them equal. */
export function bestAndWorst(cells: readonly YearCell[]): BestAndWorst {
  const known = cells.filter((cell) => cell.days);
  const days = (cell: YearCell) => cell.days!.value ?? Infinity;
  const [most, least] = [Math.max(...known.map(days)), Math.min(...known.map(days))];
  return {
    best: known.filter((cell) => days(cell) === most),
    worst: known.filter((cell) => days(cell) === least),
  };
}

/** As it stands in a cell: "10 h" below a day, "2.4 d", "≥ 14 d"; rounded down. */
export function cellText({ days }: YearCell, horizonDays: number): string {
  if (!days) return '…';
  return reachCell(days.value, horizonDays);
}

/** Months within a tenth of each other, or within what nobody would plan on, are called alike: common practice, no source. */
const ALIKE_SHARE = 0.9;

/**
 * What the months of one column can be compared to say. `not yet`: some are still to come, or they do not stand on
 * equally many outages; `too few`: their intervals do not tell them apart, or no figure can be told from so few.
 */
export type MonthsTold = 'not yet' | 'too few' | 'alike' | 'apart';

export function monthsTold(cells: readonly YearCell[]): MonthsTold {
  const draws = cells[0]?.draws ?? 0;
  if (!cells.every((cell) => cell.days && cell.draws === draws)) return 'not yet';
  if (tooFewToTell(draws)) return 'too few';
  const { best, worst } = bestAndWorst(cells);
  const [most, least] = [best[0]!.days!, worst[0]!.days!];
  if (areAlike(least.value ?? Infinity, most.value ?? Infinity)) return 'alike';
  return (most.low ?? Infinity) > (least.high ?? Infinity) ? 'apart' : 'too few';
}

function areAlike(least: number, most: number): boolean {
  return least >= ALIKE_SHARE * most || most - least < LEAST_DAYS;
}

/** Why months cannot be compared yet, as a part of a sentence. */
export function whyNotYet(cells: readonly YearCell[]): string {
  const missing = cells.filter((cell) => !cell.days).length;
  if (missing === 0) return 'they do not all rest on equally many outages';
  return `${counted(missing, 'month')} ${missing === 1 ? 'is' : 'are'} still to come`;
}
