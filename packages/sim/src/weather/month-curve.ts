/** Twelve monthly values as a curve through the year, without steps at month ends. */
import { DAYS_PER_YEAR, MONTH_STARTS, monthLength, monthOfDay } from './calendar.ts';

const MID_MONTH_DAYS = MONTH_STARTS.map((start, month) => start + monthLength(month) / 2);

/**
 * Where a day lies between the middles of the months: 2.25 is a quarter of the way from mid-March to mid-April.
 *
 * @param day of the common year, 0…364; its middle is meant.
 * @returns 0 ≤ position < 12.
 */
export function monthPosition(day: number): number {
  const at = day + 0.5;
  const month = monthOfDay(day);
  const before = at >= MID_MONTH_DAYS[month]! ? month : (month + 11) % 12;
  const from = MID_MONTH_DAYS[before]! - (before > month ? DAYS_PER_YEAR : 0);
  const after = (before + 1) % 12;
  const to = MID_MONTH_DAYS[after]! + (from > 0 && after === 0 ? DAYS_PER_YEAR : 0);
  return before + (at - from) / (to - from);
}

/** The curve at a position from `monthPosition`: straight between mid-months. @param nodes one value for each mid-month. */
export function curveAt(nodes: ArrayLike<number>, position: number): number {
  const before = Math.floor(position);
  const share = position - before;
  return nodes[before]! * (1 - share) + nodes[before === 11 ? 0 : before + 1]! * share;
}

/**
 * Mid-month values of the curve whose average over each month is that month's given mean: a plain line through the
 * means themselves would cut the summer's top and fill the winter's bottom.
 *
 * @param means twelve, January first.
 */
export function meanKeepingNodes(means: readonly number[]): number[] {
  const rows = means.map((mean, month) => [...dailyWeights(month), mean]);
  for (let pivot = 0; pivot < 12; pivot++) eliminate(rows, pivot); // diagonal about 3/4, so no pivoting is needed
  return rows.map((row, month) => row[12]! / row[month]!);
}

/** How much each mid-month value counts in the average over one month. */
function dailyWeights(month: number): number[] {
  const weights = new Array<number>(12).fill(0);
  const length = monthLength(month);
  for (let day = MONTH_STARTS[month]!; day < MONTH_STARTS[month]! + length; day++) {
    const position = monthPosition(day);
    const before = Math.floor(position);
    const share = position - before;
    weights[before]! += (1 - share) / length;
    weights[(before + 1) % 12]! += share / length;
  }
  return weights;
}

/** One Gauss–Jordan step: clears column `pivot` from every other row. */
function eliminate(rows: number[][], pivot: number): void {
  const pivotRow = rows[pivot]!;
  rows.forEach((row, index) => {
    if (index === pivot) return;
    const factor = row[pivot]! / pivotRow[pivot]!;
    for (let column = pivot; column < 13; column++) row[column]! -= factor * pivotRow[column]!;
  });
}
