/** Dry-bulb through the day, from daily means. */
import { cosDeg } from '../sky/angles.ts';

/** Local solar hours of the lowest and highest dry-bulb. Measured at 25 places: 5 or 6, and 13 to 16. */
export const COLDEST_HOUR = 5.5;
export const WARMEST_HOUR = 14.5;

/**
 * Daily range over the month's mean range, as a straight line in daily clearness. Fitted to the ranges of dark, mixed,
 * fair and clear days at 25 places (TMY3, SRRL, DTU), where they stand as 0.57 : 0.78 : 1 : 1.17.
 */
const RANGE_OVERCAST = 0.33;
const RANGE_PER_CLEARNESS = 1.15;

/** @returns °C from the coldest to the warmest of the day. */
export function dailyRangeC(monthRangeC: number, clearness: number, monthClearness: number): number {
  return (
    (monthRangeC * (RANGE_OVERCAST + RANGE_PER_CLEARNESS * clearness)) /
    (RANGE_OVERCAST + RANGE_PER_CLEARNESS * monthClearness)
  );
}

/**
 * Hour-start values joined by half cosines from each day's coldest hour to its warmest and on to the next day's
 * coldest: no step at midnight.
 *
 * @param meansC, rangesC one per day, one day more than is filled.
 * @param out 24 × days + 1 values.
 */
export function fillDiurnalDryBulb(
  meansC: ArrayLike<number>,
  rangesC: ArrayLike<number>,
  days: number,
  out: Float64Array,
): void {
  for (let index = 0; index <= 24 * days; index++) {
    const day = Math.min(Math.floor(index / 24), days);
    const hour = index - 24 * day;
    const rising = hour >= COLDEST_HOUR && hour < WARMEST_HOUR;
    const warmDay = hour < COLDEST_HOUR ? Math.max(0, day - 1) : day;
    const coldDay = hour < WARMEST_HOUR ? day : day + 1;
    const warmestC = meansC[warmDay]! + rangesC[warmDay]! / 2;
    const coldestC = meansC[coldDay]! - rangesC[coldDay]! / 2;
    const from = rising ? coldestC : warmestC;
    const to = rising ? warmestC : coldestC;
    out[index] = from + ((to - from) * TWICE_SHARES[hour]!) / 2;
  }
}

/** How far each hour of the day lies along its half cosine, coldest to warmest or warmest to coldest; 0…2. */
const TWICE_SHARES = Float64Array.from({ length: 24 }, (_, hour) => 1 - cosDeg(180 * lineShare(hour)));

/** The same along a straight line, 0…1. */
function lineShare(hour: number): number {
  const night = 24 - WARMEST_HOUR + COLDEST_HOUR;
  if (hour < COLDEST_HOUR) return (hour + 24 - WARMEST_HOUR) / night;
  if (hour < WARMEST_HOUR) return (hour - COLDEST_HOUR) / (WARMEST_HOUR - COLDEST_HOUR);
  return (hour - WARMEST_HOUR) / night;
}

/** How much the levels of the day before, the day and the day after count in the mean of a day's 24 hour-ending values. */
export function dayMeanWeights(): readonly number[] {
  const hours = new Float64Array(24 * 3 + 1);
  return [0, 1, 2].map((warmDay) => {
    const levels = [0, 1, 2, 3].map((day) => (day === warmDay ? 1 : 0));
    fillDiurnalDryBulb(levels, [0, 0, 0, 0], 3, hours);
    return hours.subarray(25, 49).reduce((sum, value) => sum + value, 0) / 24;
  });
}
