/** How long one set of runs lasts, to choose by: days that a share of them reach, and the mean. */
import { mean } from 'simple-statistics';
import type { Runtimes } from '../trials/bootstrap.ts';
import { MINUTES_PER_DAY } from '../trials/minutes-per-day.ts';
import { daysReachedBy } from '../trials/quantile.ts';
import { kaplanMeier } from '../trials/survival.ts';

export interface Reach {
  /** Days that the share reach; null = at least the horizon. */
  readonly days: number | null;
  /** Mean of the days, each outage cut at the horizon. */
  readonly meanDays: number;
}

export function reachOf(runtimes: Runtimes, share: number): Reach {
  return { days: daysReached(runtimes, share), meanDays: meanDays(runtimes.times) };
}

export function daysReached({ times, censored }: Runtimes, share: number): number | null {
  return daysReachedBy(share, kaplanMeier(times, censored), MINUTES_PER_DAY).value;
}

/** Mean of some runtimes in minutes, days. */
export function meanDays(minutes: Float64Array): number {
  return mean(Array.from(minutes)) / MINUTES_PER_DAY;
}

/** By the days that the share reach, then by the mean. */
export function lastsLonger(a: Reach, b: Reach): boolean {
  const [daysA, daysB] = [a.days ?? Infinity, b.days ?? Infinity];
  return daysA > daysB || (daysA === daysB && a.meanDays > b.meanDays);
}
