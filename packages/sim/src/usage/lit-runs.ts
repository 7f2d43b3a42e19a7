/** The dark waking minutes of an outage. MODEL.md §Usage, U7. */
import type { OutageClock } from '../clock/outage-clock.ts';
import { appendRun, createMinuteRuns, type MinuteRuns } from './minute-runs.ts';

/** Room for the lit runs of any `minutes` minutes: at most every other one. */
export function createLitRuns(minutes: number): MinuteRuns {
  return createMinuteRuns(Math.ceil(minutes / 2) + Math.ceil(minutes / 1440) + 3);
}

/**
 * Finds the runs of minutes in which people are up and the sun is lower than a given elevation, day by day.
 *
 * @param awake 1 for each of the 1,440 local minutes of a day in which people are up.
 * @param sinElevation sine of the sun's elevation, one value per minute.
 * @param sinDark sine of the elevation below which it is dark.
 */
export function findLitRuns(
  clock: OutageClock,
  awake: Uint8Array,
  sinElevation: Float32Array,
  sinDark: number,
  runs: MinuteRuns,
): void {
  const { localDay, localMinuteOfDay, minutes } = clock;
  runs.count = 0;
  let from = -1;
  for (let m = 0; m < minutes; m++) {
    const lit = sinElevation[m]! < sinDark && awake[localMinuteOfDay[m]!] === 1;
    const dayOver = from >= 0 && localDay[m] !== localDay[from];
    if (from >= 0 && (!lit || dayOver)) {
      appendRun(runs, from, m, localDay[from]!);
      from = -1;
    }
    if (lit && from < 0) from = m;
  }
  if (from >= 0) appendRun(runs, from, minutes, localDay[from]!);
}
