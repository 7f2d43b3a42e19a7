import { MONTH_STARTS, monthLength } from './calendar.ts';
import { curveAt, monthPosition } from './month-curve.ts';

/**
 * Part of the variance of a month's days about the month's mean that is the season moving on.
 *
 * @param nodes twelve mid-month values of the curve through the year.
 * @param month 0…11.
 */
export function driftVariance(nodes: readonly number[], month: number): number {
  const first = MONTH_STARTS[month]!;
  const values = Array.from({ length: monthLength(month) }, (_, day) =>
    curveAt(nodes, monthPosition(first + day)),
  );
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0) / (values.length - 1);
}
