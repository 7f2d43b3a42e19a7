/** Hour-level statistics of generated weather, by the calculation that the observed ones were made with. */
import { createSunTable } from '../../../packages/sim/src/sky/sun-table.ts';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { drawHourlyWeather, planWeather } from '../../../packages/sim/src/weather/draw-weather.ts';
import type { NormalsPlace } from '../../../packages/sim/src/weather/normals-table.ts';

/** Hours with the sun above 10°, one entry each; days in order. */
export interface SunlitHours {
  readonly day: number[];
  readonly hour: number[];
  readonly clearness: number[];
  readonly dayClearness: number[];
  readonly elevationDeg: number[];
}

const SIN_10_DEG = Math.sin(Math.PI / 18);
const FIRST_DAY = Date.UTC(2002, 0, 1) / 86_400_000;

/** Adds the hours of `years` generated years of one place. */
export function addGeneratedHours(place: NormalsPlace, years: number, out: SunlitHours): void {
  const site = {
    place: place.name,
    latitudeDeg: place.latitudeDeg,
    longitudeDeg: place.longitudeDeg,
    elevationM: place.elevationM,
    timeZone: 'UTC',
    groundReflectance: 0.2,
    windMs: 3,
    indoorC: 21,
    indoorFollowsFraction: 0.3,
  };
  const source = { kind: 'normals', name: place.name, monthly: place.monthly } as const;
  const outage = { stormLed: false, stormDullestFraction: 1 };
  const plan = planWeather(
    source,
    { windowDays: 0, blockDays: 1, snowCoverDays: undefined },
    outage,
    site,
    createSunTable(site),
  );
  for (let year = 0; year < years; year++) {
    const startEpochMinute = FIRST_DAY * 1440 - plan.skies.offsetMinutes;
    const hourly = drawHourlyWeather(plan, startEpochMinute, 365 * 1440, streamsOf(place.id, year));
    const dayBase = (out.day.at(-1) ?? 0) + 2; // never adjacent to another year's
    for (let day = 0; day < 365; day++) {
      const sky = plan.skies.day(FIRST_DAY + day);
      let total = 0;
      for (let h = 0; h < 24; h++) total += hourly.clearness[24 * day + h]! * sky.hourCosZenith[h]!;
      for (let h = 0; h < 24; h++) {
        if (sky.hourCosZenith[h]! <= SIN_10_DEG) continue;
        out.day.push(dayBase + day);
        out.hour.push(h);
        out.clearness.push(hourly.clearness[24 * day + h]!);
        out.dayClearness.push(total / sky.dayCosZenith);
        out.elevationDeg.push((Math.asin(sky.hourCosZenith[h]!) * 180) / Math.PI);
      }
    }
  }
}

export const emptyHours = (): SunlitHours => ({
  day: [],
  hour: [],
  clearness: [],
  dayClearness: [],
  elevationDeg: [],
});

/** Residuals: clearness less the mean of the same daily clearness (steps of 0.05) and elevation (steps of 10°). */
export function residuals(hours: SunlitHours): number[] {
  const groups = new Map<number, [number, number]>();
  const key = (i: number): number =>
    100 * Math.floor(hours.dayClearness[i]! / 0.05) + Math.floor(hours.elevationDeg[i]! / 10);
  hours.clearness.forEach((value, i) => {
    const group = groups.get(key(i)) ?? [0, 0];
    groups.set(key(i), [group[0] + value, group[1] + 1]);
  });
  return hours.clearness.map((value, i) => value - groups.get(key(i))![0] / groups.get(key(i))![1]);
}

export interface ClassStatistics {
  readonly hours: number;
  readonly mean: number;
  readonly sd: number;
  readonly below02: number;
  readonly above07: number;
  readonly sdResidual: number;
  readonly lag1: number;
  readonly quantiles: readonly number[];
}

/** Of the hours whose daily clearness is in [from, to). */
export function classStatistics(
  hours: SunlitHours,
  residual: readonly number[],
  from: number,
  to: number,
): ClassStatistics {
  const rows = hours.day
    .map((_, i) => i)
    .filter((i) => hours.dayClearness[i]! >= from && hours.dayClearness[i]! < to);
  const values = rows.map((i) => hours.clearness[i]!);
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const sd = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length);
  let product = 0;
  let squares = 0;
  let pairs = 0;
  let all = 0;
  for (const i of rows) {
    all += residual[i]! ** 2;
    if (hours.day[i + 1] !== hours.day[i] || hours.hour[i + 1] !== hours.hour[i]! + 1) continue;
    product += residual[i]! * residual[i + 1]!;
    squares += (residual[i]! ** 2 + residual[i + 1]! ** 2) / 2;
    pairs++;
  }
  const sorted = [...values].sort((a, b) => a - b);
  return {
    hours: rows.length,
    mean,
    sd,
    below02: values.filter((v) => v < 0.2).length / values.length,
    above07: values.filter((v) => v > 0.7).length / values.length,
    sdResidual: Math.sqrt(all / rows.length),
    lag1: pairs > 0 ? product / squares : NaN,
    quantiles: [0.05, 0.25, 0.5, 0.75, 0.95].map((q) => sorted[Math.floor(q * (sorted.length - 1))]!),
  };
}
