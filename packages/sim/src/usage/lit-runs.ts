/** The dark waking minutes of an outage. MODEL.md §Usage, U7. */
import type { LocalDays } from './local-days.ts';
import { appendRun, createMinuteRuns, type MinuteRuns } from './minute-runs.ts';

/** Room for the lit runs of any `minutes` minutes: at most every other one. */
export function createLitRuns(minutes: number): MinuteRuns {
  return createMinuteRuns(Math.ceil(minutes / 2) + Math.ceil(minutes / 1440) + 3);
}

/**
 * Finds the runs of minutes in which people are up and the sun is lower than a given elevation, day by day; the clocks'
 * change within a day ends a run and begins another.
 *
 * @param awake 1 for each of the 1,440 local minutes of a day in which people are up.
 * @param sinElevation sine of the sun's elevation, one value per minute.
 * @param sinDark sine of the elevation below which it is dark.
 */
export function findLitRuns(
  days: LocalDays,
  awake: Uint8Array,
  sinElevation: Float32Array,
  sinDark: number,
  runs: MinuteRuns,
): void {
  runs.count = 0;
  for (let s = 0; s < days.stretchCount; s++) {
    const end = days.stretchAt[s + 1]!;
    const toReading = days.stretchReading[s]! - days.stretchAt[s]!;
    let m = days.stretchAt[s]!;
    while (m < end) {
      while (m < end && !(sinElevation[m]! < sinDark && awake[m + toReading] === 1)) m++;
      const from = m;
      while (m < end && sinElevation[m]! < sinDark && awake[m + toReading] === 1) m++;
      appendRun(runs, from, m, days.stretchDay[s]!);
    }
  }
}
