/** Days that a share of outages reach, and what the same outages gain between two ways of running. MODEL.md S4, S7. */
import type { Stream } from '../chance/streams.ts';
import { resampleCount, resampledDifference, resampledTimesReached, type Runtimes } from './bootstrap.ts';
import { MINUTES_PER_DAY } from './minutes-per-day.ts';
import { meanPairedDifference } from './paired.ts';
import { daysReachedBy, timeReachedBy } from './quantile.ts';
import type { Estimate } from './study-summary.ts';
import { kaplanMeier } from './survival.ts';

export interface RuntimeGain {
  /** Of the days that the share reach. */
  readonly days: Estimate;
  /** Of the mean, each outage cut at the horizon. */
  readonly meanDays: Estimate;
}

export interface RuntimeComparison {
  /** Days that the share reach; null = at least the horizon. */
  reached(at: number): Estimate;
  /** What `second` has more than `first`: positions in the list of runtimes. */
  gain(first: number, second: number): RuntimeGain;
}

/**
 * @param runtimes all over the same draws, ≥ 1
 * @param perDay units of `times` in a day; left out: minutes
 */
export function compareRuntimes(
  runtimes: readonly Runtimes[],
  share: number,
  horizonDays: number,
  chance: Stream,
  perDay = MINUTES_PER_DAY,
): RuntimeComparison {
  const tables = runtimes.map(({ times, censored }) => kaplanMeier(times, censored));
  const resampled = resampledTimesReached(runtimes, share, resampleCount(runtimes[0]!.times.length), chance);
  const sides = tables.map((table, i) => ({
    point: timeReachedBy(share, table.time, table.survival),
    resampled: resampled[i]!,
  }));
  const inDays = ({ value, low, high }: Estimate): Estimate => {
    const days = (time: number | null) => (time === null ? null : time / perDay);
    return { value: days(value), low: days(low), high: days(high) };
  };
  return {
    reached: (at) => daysReachedBy(share, tables[at]!, perDay),
    gain: (first, second) => ({
      days: inDays(resampledDifference(sides[second]!, sides[first]!, horizonDays * perDay)),
      meanDays: inDays(meanPairedDifference(runtimes[second]!.times, runtimes[first]!.times)),
    }),
  };
}
