import { horizonMinutes } from './minutes-per-day.ts';
import { kaplanMeier, type LifeTable } from './survival.ts';

/**
 * Life table of the minutes at which something first happened. NaN, "did not happen", is censored at the horizon.
 *
 * @param firstMinute one per draw, from the outage's start
 * @returns in minutes
 */
export function firstMinutesTable(firstMinute: Float64Array, horizonDays: number): LifeTable {
  const most = horizonMinutes(horizonDays);
  return kaplanMeier(
    firstMinute.map((minute) => (Number.isNaN(minute) ? most : minute)),
    firstMinute.map((minute) => (Number.isNaN(minute) ? 1 : 0)),
  );
}
