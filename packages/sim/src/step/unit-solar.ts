/** The panels of every unit through one draw: where sky and power meet. MODEL.md §5. */
import type { OutageClock } from '../clock/outage-clock.ts';
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { addArrayW, clipToInput } from '../power/solar-array.ts';
import type { ArraySpec, UnitSpec } from '../scenario/schema.ts';
import { fillPlaneIrradiance, planeView } from '../sky/plane-of-array.ts';
import type { Daylight, SunTrack } from '../sky/sun-table.ts';
import type { Plane } from '../sky/sun-direction.ts';
import type { WeatherDraw } from '../weather/weather-draw.ts';
import type { UnitSolar } from './prepared-draw.ts';
import { createSolarMinutes, sumUpHour, sumUpSolar } from './solar-minutes.ts';
import { stowedMinutes } from './stowed-panels.ts';

/** Every distinct plane of the given units, in order of first mention. */
export function planesOf(units: readonly UnitSpec[]): Plane[] {
  const planes = new Map<string, Plane>();
  for (const { solar } of units)
    for (const { tiltDeg, azimuthDeg } of solar?.arrays ?? [])
      planes.set(`${tiltDeg} ${azimuthDeg}`, { tiltDeg, azimuthDeg });
  return [...planes.values()];
}

export function createUnitSolar(minutes: number): UnitSolar {
  return {
    ...createSolarMinutes(minutes),
    unclippedW: new Float32Array(minutes),
    clippedHours: new Uint8Array(Math.ceil(minutes / MINUTES_PER_HOUR)),
    availableWh: 0,
    clippedWh: 0,
  };
}

/** Plane-of-array irradiance of each distinct plane, W/m². */
export function fillPlanes(
  planes: readonly Plane[],
  track: SunTrack,
  weather: WeatherDraw,
  groundReflectance: number,
  out: readonly Float32Array[],
): void {
  const { ghiWm2, dhiWm2 } = weather;
  planes.forEach(({ tiltDeg }, p) =>
    fillPlaneIrradiance(track, p, planeView(tiltDeg), ghiWm2, dhiWm2, groundReflectance, out[p]!),
  );
}

/** Watts of the unit's panels, after its input limit, and their sums; the night is passed over. */
export function fillUnitSolar(
  solar: UnitSolar,
  unit: UnitSpec,
  planes: readonly Plane[],
  planeWm2: readonly Float32Array[],
  weather: WeatherDraw,
  daylight: Daylight,
  clock: OutageClock,
): void {
  const { usableW } = solar;
  const arrays = unit.solar?.arrays ?? [];
  const lights = arrays.map((array) => planeWm2[planeOf(array, planes)]!);
  // portable panels lie in the cupboard instead of under snow
  const covers = arrays.map(({ outDuring }) =>
    outDuring === undefined ? weather.snowOnPanels : stowedMinutes(outDuring, clock),
  );
  const { dryBulbC, windMs } = weather;
  usableW.fill(0);
  for (let s = 0; s < daylight.count; s++) {
    const from = daylight.from[s]!;
    const to = daylight.to[s]!;
    for (let a = 0; a < arrays.length; a++)
      addArrayW(lights[a]!, dryBulbC, windMs, covers[a]!, arrays[a]!, usableW, from, to);
  }
  clipAndSumUp(solar, daylight, unit.solar?.inputLimitW ?? 0);
}

function planeOf(array: ArraySpec, planes: readonly Plane[]): number {
  return planes.findIndex((p) => p.tiltDeg === array.tiltDeg && p.azimuthDeg === array.azimuthDeg);
}

/** Once `usableW` holds what the panels give: clips it to the input limit, and adds up both. */
export function clipAndSumUp(solar: UnitSolar, daylight: Daylight, inputLimitW: number): void {
  const { hourWmin, mostW, clippedHours } = solar;
  sumUpSolar(solar, daylight);
  let available = 0;
  let clipped = 0;
  for (let h = 0; h < hourWmin.length; h++) {
    const given = hourWmin[h]!;
    available += given;
    clippedHours[h] = mostW[h]! > inputLimitW ? 1 : 0;
    if (clippedHours[h] === 0) continue;
    clipHour(solar, h, inputLimitW);
    clipped += given - hourWmin[h]!;
  }
  solar.availableWh = available / 60;
  solar.clippedWh = clipped / 60;
}

function clipHour(solar: UnitSolar, hour: number, inputLimitW: number): void {
  const { usableW, unclippedW } = solar;
  const from = hour * MINUTES_PER_HOUR;
  const to = Math.min(usableW.length, from + MINUTES_PER_HOUR);
  unclippedW.set(usableW.subarray(from, to), from);
  clipToInput(unclippedW, inputLimitW, usableW, from, to);
  sumUpHour(solar, hour);
}

/** Watts that the unit's panels give in a minute, before its input limit. */
export function availableW({ usableW, unclippedW, clippedHours }: UnitSolar, minute: number): number {
  return clippedHours[(minute / MINUTES_PER_HOUR) | 0] === 1 ? unclippedW[minute]! : usableW[minute]!;
}
