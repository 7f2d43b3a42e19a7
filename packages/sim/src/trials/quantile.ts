import { MINUTES_PER_DAY } from './minutes-per-day.ts';
import type { Estimate } from './study-summary.ts';
import { lowAtStart } from './survival.ts';
import type { LifeTable } from './survival.ts';

/** The share of runs whose days are told first: what nine outages in ten reach. */
export const NINE_IN_TEN = 0.9;

/** How far below a share another may lie and still count as it: products and differences of fractions miss it by a few last bits. */
export const SHARE_SLACK = 1e-9;

/**
 * The longest time that a share of runs reaches: the largest t with P(T ≥ t) ≥ share, which is the first time at
 * which the curve falls below `share`. For complete samples that is quantile type 1 (Hyndman & Fan 1996) counted
 * from the longest. Given the curve's lower or upper limit instead, it is the limit of the test-inversion interval of
 * Brookmeyer & Crowley 1982, Biometrics 38:29–41.
 *
 * @param time ascending; `survival[i]` holds from `time[i]` to the next; before the first it is `atStart`.
 * @param share 0 < share < 1.
 * @returns in the unit of `time`; null where the curve never falls below `share` while watched.
 */
export function timeReachedBy(
  share: number,
  time: ArrayLike<number>,
  survival: ArrayLike<number>,
  atStart = 1,
): number | null {
  if (atStart < share - SHARE_SLACK) return 0;
  for (let i = 0; i < time.length; i += 1) if (survival[i]! < share - SHARE_SLACK) return time[i]!;
  return null;
}

/**
 * Days that a share of runs reach, with the interval read from the curve's own limits. MODEL.md, Statistics, S4.
 * A null is at least the horizon.
 *
 * @param perDay units of `table.time` in a day.
 */
export function daysReachedBy(share: number, table: LifeTable, perDay: number): Estimate {
  const days = (curve: Float64Array, atStart: number): number | null => {
    const time = timeReachedBy(share, table.time, curve, atStart);
    return time === null ? null : time / perDay;
  };
  return {
    value: days(table.survival, 1),
    low: days(table.low, lowAtStart(table.subjects)),
    high: days(table.high, 1),
  };
}

/** The two that every summary tells, from a table in minutes: days that nine in ten reach, and half of them. */
export function nineInTenAndMedian(table: LifeTable): {
  readonly nineInTenDays: Estimate;
  readonly medianDays: Estimate;
} {
  return {
    nineInTenDays: daysReachedBy(NINE_IN_TEN, table, MINUTES_PER_DAY),
    medianDays: daysReachedBy(0.5, table, MINUTES_PER_DAY),
  };
}
