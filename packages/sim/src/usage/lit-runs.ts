/** The dark waking minutes of an outage. MODEL.md §Usage, U7. */
import type { DayRuns } from './day-runs.ts';
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
 * @param awake the waking readings of a day.
 * @param sinElevation sine of the sun's elevation, one value per minute.
 * @param sinDark sine of the elevation below which it is dark.
 */
export function findLitRuns(
  days: LocalDays,
  awake: DayRuns,
  sinElevation: Float32Array,
  sinDark: number,
  runs: MinuteRuns,
): void {
  runs.count = 0;
  for (let s = 0; s < days.stretchCount; s++) {
    const at = days.stretchAt[s]!;
    const midnight = at - days.stretchReading[s]!;
    for (let k = 0; k < awake.from.length; k++) {
      const from = Math.max(at, midnight + awake.from[k]!);
      const to = Math.min(days.stretchAt[s + 1]!, midnight + awake.to[k]!);
      findDark(sinElevation, sinDark, from, to, days.stretchDay[s]!, runs);
    }
  }
}

/** The dark runs of minutes among those from `from` up to `to`. */
function findDark(
  sinElevation: Float32Array,
  sinDark: number,
  from: number,
  to: number,
  day: number,
  runs: MinuteRuns,
): void {
  for (let m = from; m < to;) {
    while (m < to && !(sinElevation[m]! < sinDark)) m++;
    const dusk = m;
    while (m < to && sinElevation[m]! < sinDark) m++;
    appendRun(runs, dusk, m, day);
  }
}
