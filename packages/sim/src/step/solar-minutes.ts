/** A unit's usable solar by the hour: its sum, least and most, what many minutes at once come to. */
import { MINUTES_PER_HOUR, type SolarMinutes } from '../power/hour-figures.ts';
import type { Daylight } from '../sky/sun-table.ts';

export function createSolarMinutes(minutes: number): SolarMinutes {
  const hours = Math.ceil(minutes / MINUTES_PER_HOUR);
  return {
    usableW: new Float32Array(minutes),
    hourWmin: new Float64Array(hours),
    leastW: new Float32Array(hours),
    mostW: new Float32Array(hours),
  };
}

/** Once `usableW` is filled. Only the hours with daylight are looked through. */
export function sumUpSolar(solar: SolarMinutes, daylight: Daylight): void {
  solar.hourWmin.fill(0);
  solar.leastW.fill(0);
  solar.mostW.fill(0);
  for (let s = 0; s < daylight.count; s++) {
    const to = daylight.to[s]!;
    for (let h = (daylight.from[s]! / MINUTES_PER_HOUR) | 0; h * MINUTES_PER_HOUR < to; h++)
      sumUpHour(solar, h);
  }
}

export function sumUpHour({ usableW, hourWmin, leastW, mostW }: SolarMinutes, hour: number): void {
  const from = hour * MINUTES_PER_HOUR;
  const to = Math.min(usableW.length, from + MINUTES_PER_HOUR);
  let sum = 0;
  let least = usableW[from]!;
  let most = least;
  for (let m = from; m < to; m++) {
    const w = usableW[m]!;
    sum += w;
    if (w < least) least = w;
    else if (w > most) most = w;
  }
  hourWmin[hour] = sum;
  leastW[hour] = least;
  mostW[hour] = most;
}
