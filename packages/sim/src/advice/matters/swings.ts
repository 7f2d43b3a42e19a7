/** One input at a time at its low and its high, the values of the others in the middle, chance as it falls. MODEL.md §18.2. */
import { streamsOf } from '../../chance/streams.ts';
import { compareRuntimes, type RuntimeComparison } from '../../trials/compare-runtimes.ts';
import { horizonMinutes, MINUTES_PER_DAY } from '../../trials/minutes-per-day.ts';
import { NINE_IN_TEN } from '../../trials/quantile.ts';
import type { UncertainInput } from './inputs.ts';
import type { Matters, Swing } from './matters.ts';
import { MIDDLE } from './matters-job.ts';

export interface Swings {
  readonly middle: Matters['middle'];
  /** In the order of the inputs. */
  readonly perInput: readonly { readonly nineInTen: Swing; readonly median: Swing }[];
}

/** @param column runtimes in minutes by name, from the task `swings` */
export function swingsOf(
  column: (name: string) => Float64Array,
  inputs: readonly UncertainInput[],
  horizonDays: number,
  seed: string,
): Swings {
  const names = [MIDDLE, ...inputs.flatMap(({ id }) => [`low:${id}`, `high:${id}`])];
  const runtimes = names.map(column).map((minutes) => ({
    times: minutes.map((m) => m / MINUTES_PER_DAY),
    censored: minutes.map((m) => (m >= horizonMinutes(horizonDays) ? 1 : 0)),
  }));
  const comparedAt = (share: number) =>
    compareRuntimes(runtimes, share, horizonDays, streamsOf(seed, 0)('matters/swings'), 1);
  const [nineInTen, half] = [comparedAt(NINE_IN_TEN), comparedAt(0.5)];
  const swing = (compared: RuntimeComparison, i: number): Swing => {
    const [low, high] = [1 + 2 * i, 2 + 2 * i];
    return {
      lowDays: compared.reached(low).value,
      highDays: compared.reached(high).value,
      differenceDays: compared.gain(low, high).days,
    };
  };
  return {
    middle: { nineInTenDays: nineInTen.reached(0), medianDays: half.reached(0) },
    perInput: inputs.map((_, i) => ({ nineInTen: swing(nineInTen, i), median: swing(half, i) })),
  };
}
