/** Days that a share of outages reach, and what the same outages gain between two households. MODEL.md S4, S7. */
import type { Stream } from '../chance/streams.ts';
import {
  resampleCount,
  resampledDifference,
  resampledTimesReached,
  type Runtimes,
} from '../trials/bootstrap.ts';
import { horizonMinutes, MINUTES_PER_DAY } from '../trials/minutes-per-day.ts';
import { pairedRuntimes } from '../trials/paired.ts';
import { daysReachedBy, timeReachedBy } from '../trials/quantile.ts';
import type { Estimate } from '../trials/study-summary.ts';
import { kaplanMeier } from '../trials/survival.ts';

export interface RuntimeGain {
  /** Of the days that the share reach. */
  readonly days: Estimate;
  /** Of the mean, each outage cut at the horizon. */
  readonly meanDays: Estimate;
}

/** How sure a gain is: in the days counted, at least on average, or not at all; or that it is a loss in one of them. */
export type Told = 'clear' | 'on average' | 'not told from zero' | 'a loss';

export function toldOf({ days, meanDays }: RuntimeGain): Told {
  if (isAbove(days)) return 'clear';
  if (isBelow(days)) return 'a loss';
  return isAbove(meanDays) ? 'on average' : isBelow(meanDays) ? 'a loss' : 'not told from zero';
}

const isAbove = ({ low }: Estimate) => low !== null && low > 0;
const isBelow = ({ high }: Estimate) => high !== null && high < 0;

/** Told from none at all, and for the better. */
export function isGain(told: Told): boolean {
  return told === 'clear' || told === 'on average';
}

export interface RuntimeComparison {
  /** Days that the share reach; null = at least the horizon. */
  reached(at: number): Estimate;
  /** What `second` has more than `first`: positions in the list of runtimes. */
  gain(first: number, second: number): RuntimeGain;
}

/** @param runtimes all over the same draws, ≥ 1 */
export function compareRuntimes(
  runtimes: readonly Runtimes[],
  share: number,
  horizonDays: number,
  chance: Stream,
): RuntimeComparison {
  const tables = runtimes.map(({ times, censored }) => kaplanMeier(times, censored));
  const resampled = resampledTimesReached(runtimes, share, resampleCount(runtimes[0]!.times.length), chance);
  const sides = tables.map((table, i) => ({
    point: timeReachedBy(share, table.time, table.survival),
    resampled: resampled[i]!,
  }));
  return {
    reached: (at) => daysReachedBy(share, tables[at]!, MINUTES_PER_DAY),
    gain: (first, second) => ({
      days: inDays(resampledDifference(sides[second]!, sides[first]!, horizonMinutes(horizonDays))),
      meanDays: inDays(pairedRuntimes(runtimes[second]!.times, runtimes[first]!.times).meanDifference),
    }),
  };
}

function inDays({ value, low, high }: Estimate): Estimate {
  const days = (minutes: number | null) => (minutes === null ? null : minutes / MINUTES_PER_DAY);
  return { value: days(value), low: days(low), high: days(high) };
}
