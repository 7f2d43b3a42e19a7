/** Running sums of a unit's usable solar, and the least and most of every hour: what many minutes at once come to. */
import { MINUTES_PER_HOUR, type SolarMinutes } from '../power/hour-figures.ts';
import type { Daylight } from '../sky/sun-table.ts';

export function createSolarMinutes(minutes: number): SolarMinutes {
  const hours = Math.ceil(minutes / MINUTES_PER_HOUR);
  return {
    usableW: new Float32Array(minutes),
    wminBefore: new Float64Array(minutes + 1),
    leastW: new Float32Array(hours),
    mostW: new Float32Array(hours),
  };
}

/** Once `usableW` is filled. Between the stretches of daylight the sums stand still. */
export function sumUpSolar(solar: SolarMinutes, daylight: Daylight): void {
  const { usableW, wminBefore } = solar;
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
  for (let hour = 0; hour < solar.leastW.length; hour++) boundHour(solar, hour);
}

function boundHour({ usableW, wminBefore, leastW, mostW }: SolarMinutes, hour: number): void {
  const from = hour * MINUTES_PER_HOUR;
  const to = Math.min(usableW.length, from + MINUTES_PER_HOUR);
  let least = usableW[from]!;
  let most = least;
  if (wminBefore[to]! > wminBefore[from]!) {
    for (let m = from + 1; m < to; m++) {
      const w = usableW[m]!;
      if (w < least) least = w;
      else if (w > most) most = w;
    }
  }
  leastW[hour] = least;
  mostW[hour] = most;
}
