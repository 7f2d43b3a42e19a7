/** Running sums of a unit's usable solar, and the least and most of every hour: what lets a unit go through many minutes at once. */
import type { Daylight } from '../sky/sun-table.ts';
import { MINUTES_PER_HOUR } from './hour-loads.ts';

export interface SolarSums {
  /** Watt-minutes before each minute, length minutes + 1. */
  readonly wminBefore: Float64Array;
  /** Per hour of the outage, W. */
  readonly leastW: Float32Array;
  readonly mostW: Float32Array;
}

export function createSolarSums(minutes: number): SolarSums {
  const hours = Math.ceil(minutes / MINUTES_PER_HOUR);
  return {
    wminBefore: new Float64Array(minutes + 1),
    leastW: new Float32Array(hours),
    mostW: new Float32Array(hours),
  };
}

/** Goes through the daylight stretches; between them the sums stand still. */
export function fillSolarSums(sums: SolarSums, usableW: Float32Array, daylight: Daylight): void {
  const { wminBefore, leastW, mostW } = sums;
  let sum = 0;
  let dark = 0;
  for (let s = 0; s < daylight.count; s++) {
    const from = daylight.from[s]!;
    const to = daylight.to[s]!;
    wminBefore.fill(sum, dark, from);
    for (let m = from; m < to; m++) {
      wminBefore[m] = sum;
      sum += usableW[m]!;
    }
    dark = to;
  }
  wminBefore.fill(sum, dark);
  for (let h = 0; h < leastW.length; h++) {
    const from = h * MINUTES_PER_HOUR;
    const to = Math.min(usableW.length, from + MINUTES_PER_HOUR);
    let least = 0;
    let most = 0;
    if (wminBefore[to]! > wminBefore[from]!) {
      least = most = usableW[from]!;
      for (let m = from + 1; m < to; m++) {
        const w = usableW[m]!;
        if (w < least) least = w;
        else if (w > most) most = w;
      }
    }
    leastW[h] = least;
    mostW[h] = most;
  }
}
