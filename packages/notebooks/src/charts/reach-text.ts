/** An estimate of days in words, by the library's own rounding: "at least" must stay true. */
import { atLeastThisLong, daysDown, daysUp, type Estimate } from '@rideout/sim';

/** "2.4 days", "19 hours"; null, hidden by the horizon → "14 days or more". */
export function reachText(days: number | null, horizonDays: number): string {
  return days === null ? `${atLeastThisLong(horizonDays)} or more` : atLeastThisLong(days);
}

/** The limits of an estimate, the lower rounded down and the upper up: "14 hours" and "1.2 days", or "2.1" and "2.7 days". */
export function limitTexts({ low, high }: Estimate, horizonDays: number): { low: string; high: string } {
  const inHours = (limit: number | null) => limit !== null && limit < 1;
  const lowUnit = inHours(low) ? 'hours' : 'days';
  const highUnit = inHours(high) ? 'hours' : 'days';
  const lowText = inHours(low) ? String(Math.floor(low! * 24)) : daysDown(low, horizonDays);
  const highText = inHours(high) ? String(Math.ceil(high! * 24)) : daysUp(high, horizonDays);
  return {
    low: lowUnit === highUnit ? lowText : `${lowText}\u00a0${lowUnit}`,
    high: `${highText}\u00a0${highUnit}`,
  };
}

/** "95 % interval 2.1 to 2.7 days", "95 % interval 14 hours to 1.2 days". */
export function intervalText(estimate: Estimate, horizonDays: number): string {
  if (estimate.low === null) return `95\u00a0% interval beyond the ${atLeastThisLong(horizonDays)} simulated`;
  const { low, high } = limitTexts(estimate, horizonDays);
  return `95\u00a0% interval ${low}\u00a0to\u00a0${high}`;
}
