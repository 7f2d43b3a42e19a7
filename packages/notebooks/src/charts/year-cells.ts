/** The year's heat map as cells: a month and one thing changed, the days that nine outages in ten reach. */
import { daysDown, type Estimate, type StudySummary } from '@rideout/sim';

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
  if (days.value !== null && days.value < 1) return `${Math.floor(days.value * 24 + 1e-9)}\u00a0h`;
  return `${daysDown(days.value, horizonDays)}\u00a0d`;
}

/** Do the intervals of the best and the worst month lie apart? */
export function monthsDiffer({ best, worst }: BestAndWorst): boolean {
  const low = best[0]?.days?.low ?? Infinity;
  const high = worst[0]?.days?.high ?? Infinity;
  return low > high;
}
