/** The dark waking minutes of an outage. MODEL.md §Usage, U7. */
import type { OutageClock } from '../clock/outage-clock.ts';
import { appendRun, createMinuteRuns, type MinuteRuns } from './minute-runs.ts';

/** Room for the lit runs of any `minutes` minutes: at most every other one. */
export function createLitRuns(minutes: number): MinuteRuns {
  return createMinuteRuns(Math.ceil(minutes / 2) + Math.ceil(minutes / 1440) + 3);
}

/**
 * Finds the runs of minutes in which people are up and the sun is lower than `belowDeg`, day by day.
 *
 * @param awake 1 for each of the 1,440 local minutes of a day in which people are up.
 * @param sunElevationDeg one value per minute, degrees above the horizon.
 */
export function findLitRuns(
  clock: OutageClock,
  awake: Uint8Array,
  sunElevationDeg: Float32Array,
  belowDeg: number,
  runs: MinuteRuns,
): void {
  const { localDay, localMinuteOfDay, minutes } = clock;
  runs.count = 0;
  let from = -1;
  for (let m = 0; m < minutes; m++) {
    const lit = sunElevationDeg[m]! < belowDeg && awake[localMinuteOfDay[m]!] === 1;
    const dayOver = from >= 0 && localDay[m] !== localDay[from];
    if (from >= 0 && (!lit || dayOver)) {
      appendRun(runs, from, m, localDay[from]!);
      from = -1;
    }
    if (lit && from < 0) from = m;
  }
  if (from >= 0) appendRun(runs, from, minutes, localDay[from]!);
}
