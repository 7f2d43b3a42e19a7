/** Hours to minutes: flicker, the diffuse share, straight lines for dry-bulb and wind. */
import type { Stream } from '../chance/streams.ts';
import type { SunTrack } from '../sky/sun-table.ts';
import type { DaySkies } from './day-sky.ts';
import { fillFlicker } from './flicker.ts';
import type { FlickerState } from './flicker.ts';
import type { HourlyWeather } from './hourly-weather.ts';
import type { WeatherDraw } from './weather-draw.ts';

/**
 * Fills irradiance, dry-bulb and wind of `out` for the minutes from `startEpochMinute`. Whole hours are worked out even
 * where the outage covers part of one, so a later end changes nothing before it.
 */
export function fillMinutes(
  hourly: HourlyWeather,
  skies: DaySkies,
  sun: SunTrack,
  startEpochMinute: number,
  stream: Stream,
  out: WeatherDraw,
): void {
  const { minutes } = out;
  out.ghiWm2.fill(0);
  out.dhiWm2.fill(0);
  const state: FlickerState = { slow: 0, fast: 0 };
  const flicker = new Float64Array(60);
  for (let hour = 0; hour < 24 * hourly.days; hour++) {
    const first = hourly.startEpochMinute + 60 * hour - startEpochMinute;
    const from = Math.max(0, first);
    const to = Math.min(minutes, first + 60);
    if (from < to) fillAir(hourly, hour, first, from, to, out);
    const dayHour = hour % 24;
    const sky = skies.day(hourly.firstLocalDay + (hour - dayHour) / 24);
    const sinElevation = sky.hourCosZenith[dayHour]!;
    if (sinElevation <= 0) continue;
    const clearness = hourly.clearness[hour]!;
    fillFlicker(clearness, sinElevation, sky.minuteCosZenith, 60 * dayHour, state, stream, flicker);
    if (from >= to) continue;
    const diffuse = diffuseClearness(
      flicker,
      hourly.diffuseFraction[hour]! * clearness,
      sky.minuteCosZenith,
      60 * dayHour,
    );
    for (let m = from; m < to; m++) {
      const cosZenith = sun.cosZenith[m]!;
      if (cosZenith <= 0) continue;
      const above = cosZenith * sun.extraterrestrialNormalWm2[m]!;
      const global = flicker[m - first]!;
      out.ghiWm2[m] = global * above;
      out.dhiWm2[m] = (global < diffuse ? global : diffuse) * above;
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
  flicker: Float64Array,
  wanted: number,
  cosZenith: Float32Array,
  from: number,
): number {
  let level = wanted;
  for (let round = 0; round < 2; round++) {
    let lacking = 0;
    let weightSum = 0;
    let brighter = 0;
    for (let i = 0; i < 60; i++) {
      const weight = cosZenith[from + i]!;
      const value = flicker[i]!;
      weightSum += weight;
      lacking += weight * (wanted - (value < level ? value : level));
      if (value > level) brighter += weight;
    }
    if (brighter <= 0 || lacking <= 1e-6 * weightSum) break;
    level += lacking / brighter;
  }
  return level;
}

function fillAir(
  hourly: HourlyWeather,
  hour: number,
  first: number,
  from: number,
  to: number,
  out: WeatherDraw,
): void {
  const startC = hourly.dryBulbC[hour]!;
  const stepC = (hourly.dryBulbC[hour + 1]! - startC) / 60;
  const startMs = hourly.windMs[hour]!;
  const stepMs = (hourly.windMs[hour + 1]! - startMs) / 60;
  for (let m = from; m < to; m++) {
    const since = m - first + 0.5;
    out.dryBulbC[m] = startC + stepC * since;
    out.windMs[m] = startMs + stepMs * since;
  }
}
