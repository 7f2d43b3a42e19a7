/** An estimate of days in words, by the library's own rounding: "at least" must stay true. */
import { atLeastThisLong, daysInterval, type Estimate } from '@rideout/sim';

/** "2.4 days", "19 hours"; null, hidden by the horizon → "14 days or more". */
export function reachText(days: number | null, horizonDays: number): string {
  return days === null ? `${atLeastThisLong(horizonDays)} or more` : atLeastThisLong(days);
}

/** "95 % interval 2.1 to 2.7 days"; in hours, lower limit rounded down and upper up, where all of it is below a day. */
export function intervalText(estimate: Estimate, horizonDays: number): string {
  const { low, high } = estimate;
  if (low !== null && high !== null && high < 1) {
    return `95\u00a0% interval ${Math.floor(low * 24)}\u00a0to\u00a0${Math.ceil(high * 24)}\u00a0hours`;
  }
  const interval = daysInterval(estimate, horizonDays);
  return interval
    ? `95\u00a0% interval ${interval}\u00a0days`
    : `95\u00a0% interval beyond the ${atLeastThisLong(horizonDays)} simulated`;
}
