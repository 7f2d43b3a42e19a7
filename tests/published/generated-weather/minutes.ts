/** Minute-level statistics of generated weather, by the calculation that the observed ones were made with. */
import { createSunTable, createSunTrack, fillSunTrack } from '../../../packages/sim/src/sky/sun-table.ts';
import { clearSkyGhiWm2 } from '../../../packages/sim/src/sky/clear-sky.ts';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { drawWeather, planWeather } from '../../../packages/sim/src/weather/draw-weather.ts';
import { createWeatherDraw } from '../../../packages/sim/src/weather/weather-draw.ts';
import type { NormalsPlace } from '../../../packages/sim/src/weather/normals-table.ts';

/** One whole hour with the sun above 10° throughout. */
export interface MinuteHour {
  /** GHI over extraterrestrial irradiance on the level, of each minute, 60. */
  readonly clearness: Float64Array;
  readonly hourClearness: number;
  /** GHI of the hour and of each minute over Haurwitz's clear sky. */
  readonly hourClearSkyIndex: number;
  readonly clearSkyIndex: Float64Array;
  readonly diffuseFraction: number;
  readonly ghiWm2: Float64Array;
}

const SIN_10_DEG = Math.sin(Math.PI / 18);

/** The hours of `years` generated years of one place. */
export function generatedMinuteHours(
  place: Pick<NormalsPlace, 'id' | 'name' | 'latitudeDeg' | 'longitudeDeg' | 'elevationM' | 'monthly'>,
  years: number,
): MinuteHour[] {
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
  const table = createSunTable(site);
  const source = { kind: 'normals', name: place.name, monthly: place.monthly } as const;
  const outage = { stormLed: false, stormDullestFraction: 1 };
  const plan = planWeather(
    source,
    { windowDays: 0, blockDays: 1, snowCoverDays: undefined },
    outage,
    site,
    table,
  );
  const minutes = 365 * 1440;
  const startEpochMinute = Date.UTC(2002, 0, 1) / 60_000 - plan.skies.offsetMinutes;
  const track = createSunTrack(minutes, 0);
  fillSunTrack(table, [], startEpochMinute, minutes, track);
  const out = createWeatherDraw(minutes);
  const hours: MinuteHour[] = [];
  for (let year = 0; year < years; year++) {
    drawWeather(plan, track, { startEpochMinute }, streamsOf(`${place.id} minutes`, year), out);
    for (let first = 0; first < minutes; first += 60) {
      const hour = hourFrom(first, track.cosZenith, track.extraterrestrialNormalWm2, out.ghiWm2, out.dhiWm2);
      if (hour !== undefined) hours.push(hour);
    }
  }
  return hours;
}

function hourFrom(
  first: number,
  cosZenith: Float32Array,
  normal: Float32Array,
  ghi: Float32Array,
  dhi: Float32Array,
): MinuteHour | undefined {
  const clearness = new Float64Array(60);
  const clearSkyIndex = new Float64Array(60);
  const ghiWm2 = Float64Array.from(ghi.subarray(first, first + 60));
  let global = 0;
  let diffuse = 0;
  let above = 0;
  let clear = 0;
  for (let i = 0; i < 60; i++) {
    const m = first + i;
    if (cosZenith[m]! <= SIN_10_DEG) return undefined;
    const aboveNow = cosZenith[m]! * normal[m]!;
    const clearNow = clearSkyGhiWm2(cosZenith[m]!);
    clearness[i] = ghi[m]! / aboveNow;
    clearSkyIndex[i] = ghi[m]! / clearNow;
    global += ghi[m]!;
    diffuse += dhi[m]!;
    above += aboveNow;
    clear += clearNow;
  }
  return {
    clearness,
    clearSkyIndex,
    ghiWm2,
    hourClearness: global / above,
    hourClearSkyIndex: global / clear,
    diffuseFraction: diffuse / global,
  };
}

export interface MinuteStatistics {
  readonly hours: number;
  readonly meanSd: number;
  readonly sdQuantiles: readonly number[];
  readonly meanRange: number;
  /** Of the deviations from the hour's clearness at 1, 5 and 15 minutes, pooled. */
  readonly correlations: readonly number[];
  readonly rmsStep: number;
  readonly above08: number;
  readonly above1: number;
  readonly diffuseFraction: number;
}

export function minuteStatistics(hours: readonly MinuteHour[]): MinuteStatistics {
  const sds: number[] = [];
  const products = [0, 0, 0];
  const squares = [0, 0, 0];
  let range = 0;
  let steps = 0;
  let above08 = 0;
  let above1 = 0;
  for (const { clearness, hourClearness } of hours) {
    const mean = clearness.reduce((a, b) => a + b, 0) / 60;
    sds.push(Math.sqrt(clearness.reduce((a, b) => a + (b - mean) ** 2, 0) / 60));
    range += Math.max(...clearness) - Math.min(...clearness);
    for (let i = 0; i < 60; i++) {
      if (clearness[i]! > 0.8) above08++;
      if (clearness[i]! > 1) above1++;
      if (i > 0) steps += (clearness[i]! - clearness[i - 1]!) ** 2;
      [1, 5, 15].forEach((lag, k) => {
        if (i < lag) return;
        const a = clearness[i]! - hourClearness;
        const b = clearness[i - lag]! - hourClearness;
        products[k]! += a * b;
        squares[k]! += (a * a + b * b) / 2;
      });
    }
  }
  sds.sort((a, b) => a - b);
  return {
    hours: hours.length,
    meanSd: sds.reduce((a, b) => a + b, 0) / sds.length,
    sdQuantiles: [0.1, 0.5, 0.9].map((q) => sds[Math.floor(q * (sds.length - 1))]!),
    meanRange: range / hours.length,
    correlations: products.map((product, k) => product / squares[k]!),
    rmsStep: Math.sqrt(steps / hours.length / 59),
    above08: above08 / hours.length / 60,
    above1: above1 / hours.length / 60,
    diffuseFraction: hours.reduce((a, h) => a + h.diffuseFraction, 0) / hours.length,
  };
}

/** Energy above a level as a share of all energy: from minutes, less the same from hour means. */
export function hiddenSurplus(hours: readonly MinuteHour[], levelWm2: number): number {
  let all = 0;
  let hidden = 0;
  for (const { ghiWm2 } of hours) {
    const sum = ghiWm2.reduce((a, b) => a + b, 0);
    all += sum;
    hidden += ghiWm2.reduce((a, b) => a + Math.max(0, b - levelWm2), 0) - Math.max(0, sum - 60 * levelWm2);
  }
  return hidden / all;
}
