/** One input at a time at its low and its high, the values of the others in the middle, chance as it falls. MODEL.md §18.2. */
import { streamsOf } from '../../chance/streams.ts';
import { resampleCount, resampledDifference, resampledTimesReached } from '../../trials/bootstrap.ts';
import { horizonMinutes, MINUTES_PER_DAY } from '../../trials/minutes-per-day.ts';
import { daysReachedBy } from '../../trials/quantile.ts';
import type { Estimate } from '../../trials/study-summary.ts';
import { kaplanMeier } from '../../trials/survival.ts';
import type { UncertainInput } from './inputs.ts';
import type { Matters, Swing } from './matters.ts';
import { MIDDLE } from './matters-job.ts';

export interface Swings {
  readonly middle: Matters['middle'];
  /** In the order of the inputs. */
  readonly perInput: readonly { readonly nineInTen: Swing; readonly median: Swing }[];
}

/** One set of runs: days that a share of them reach, as estimated and in paired resamples. */
interface Cell {
  readonly days: Estimate;
  readonly point: number | null;
  readonly resampled: Float64Array;
}

/** @param column runtimes in minutes by name, from the task `swings` */
export function swingsOf(
  column: (name: string) => Float64Array,
  inputs: readonly UncertainInput[],
  horizonDays: number,
  seed: string,
): Swings {
  const names = [MIDDLE, ...inputs.flatMap(({ id }) => [`low:${id}`, `high:${id}`])];
  const minutes = names.map(column);
  const nineInTen = cellsAt(0.9, minutes, horizonDays, seed);
  const half = cellsAt(0.5, minutes, horizonDays, seed);
  const swing = (cells: readonly Cell[], i: number): Swing => {
    const [low, high] = [cells[1 + 2 * i]!, cells[2 + 2 * i]!];
    const differenceDays = resampledDifference(high, low, horizonDays);
    return { lowDays: low.days.value, highDays: high.days.value, differenceDays };
  };
  return {
    middle: { nineInTenDays: nineInTen[0]!.days, medianDays: half[0]!.days },
    perInput: inputs.map((_, i) => ({ nineInTen: swing(nineInTen, i), median: swing(half, i) })),
  };
}

function cellsAt(share: number, minutes: readonly Float64Array[], horizonDays: number, seed: string): Cell[] {
  const runtimes = minutes.map((times) => ({
    times: times.map((t) => t / MINUTES_PER_DAY),
    censored: times.map((t) => (t >= horizonMinutes(horizonDays) ? 1 : 0)),
  }));
  const draws = runtimes[0]!.times.length;
  const chance = streamsOf(seed, 0)('matters/swings');
  const resampled = resampledTimesReached(runtimes, share, resampleCount(draws), chance);
  return runtimes.map(({ times, censored }, i) => {
    const days = daysReachedBy(share, kaplanMeier(times, censored), 1);
    return { days, point: days.value, resampled: resampled[i]! };
  });
}
