/** Days in a study are 24 h from the outage's start, whatever the clocks on the wall do. */
export const MINUTES_PER_DAY = 1440;

/** Whole minutes that a study of so many days lives through. */
export function horizonMinutes(horizonDays: number): number {
  return Math.round(horizonDays * MINUTES_PER_DAY);
}
