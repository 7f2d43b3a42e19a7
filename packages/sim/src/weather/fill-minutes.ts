/** Hours to minutes: flicker, the diffuse share, straight lines for dry-bulb and wind. */
import type { Stream } from '../chance/streams.ts';
import type { SunTrack } from '../sky/sun-table.ts';
import type { DaySkies } from './day-sky.ts';
import { fillAir } from './fill-air.ts';
import { createFlicker, shapeFlicker, walkFlicker } from './flicker.ts';
import type { Flicker } from './flicker.ts';
import type { HourlyWeather } from './hourly-weather.ts';
import type { WeatherDraw } from './weather-draw.ts';

/**
 * Fills irradiance, dry-bulb and wind of `out` for the minutes from `startEpochMinute`. Whole hours are worked out even
 * where the outage covers part of one, so a later end changes nothing before it; of the hours before its start only
 * what runs on from them.
 */
export function fillMinutes(
  hourly: HourlyWeather,
  skies: DaySkies,
  sun: SunTrack,
  startEpochMinute: number,
  stream: Stream,
  out: WeatherDraw,
): void {
  fillAir(hourly, startEpochMinute, out);
  out.ghiWm2.fill(0);
  out.dhiWm2.fill(0);
  const flicker = createFlicker();
  for (let day = 0; day < hourly.days; day++) {
    const { hourCosZenith, minuteCosZenith } = skies.day(hourly.firstLocalDay + day);
    for (let dayHour = 0; dayHour < 24; dayHour++) {
      const sinElevation = hourCosZenith[dayHour]!;
      if (sinElevation <= 0) continue;
      const hour = 24 * day + dayHour;
      const first = hourly.startEpochMinute + 60 * hour - startEpochMinute;
      if (first >= out.minutes) return;
      const clearness = hourly.clearness[hour]!;
      walkFlicker(clearness, stream, flicker);
      if (first + 60 <= 0) continue;
      shapeFlicker(clearness, sinElevation, minuteCosZenith, 60 * dayHour, flicker);
      const wanted = hourly.diffuseFraction[hour]! * clearness;
      const diffuse = diffuseClearness(flicker, wanted, minuteCosZenith, 60 * dayHour);
      fillHour(flicker.minutes, diffuse, sun, first, out);
    }
  }
}

/**
 * The level of diffuse light, as clearness, that holds through the hour: beam flickers, the sky's own light does not.
 * Where a minute is darker than that all its light is diffuse, and the other minutes carry what it lacks, so that the
 * hour keeps its diffuse share. Splitting each minute by an hourly correlation would leave broken skies with too much
 * beam.
 */
function diffuseClearness(
  { minutes, weightSum }: Flicker,
  wanted: number,
  cosZenith: Float32Array,
  from: number,
): number {
  let level = wanted;
  for (let round = 0; round < 2; round++) {
    let lacking = 0;
    let brighter = 0;
    for (let i = 0; i < 60; i++) {
      const weight = cosZenith[from + i]!;
      const value = minutes[i]!;
      if (value > level) {
        brighter += weight;
        lacking += weight * (wanted - level);
      } else lacking += weight * (wanted - value);
    }
    if (brighter <= 0 || lacking <= 1e-6 * weightSum) break;
    level += lacking / brighter;
  }
  return level;
}

/** Irradiance of those of an hour's minutes that lie in the outage, the first of them at `first`, which may lie before. */
function fillHour(
  clearness: Float64Array,
  diffuse: number,
  { cosZenith, extraterrestrialNormalWm2 }: SunTrack,
  first: number,
  { minutes, ghiWm2, dhiWm2 }: WeatherDraw,
): void {
  const to = Math.min(minutes, first + 60);
  for (let m = Math.max(0, first); m < to; m++) {
    const up = cosZenith[m]!;
    if (up <= 0) continue;
    const above = up * extraterrestrialNormalWm2[m]!;
    const global = clearness[m - first]!;
    ghiWm2[m] = global * above;
    dhiWm2[m] = Math.min(global, diffuse) * above;
  }
}
