/** The panels of every unit through one draw: where sky and power meet. MODEL.md §5. */
import type { OutageClock } from '../clock/outage-clock.ts';
import { addArrayW, clipToInput } from '../power/solar-array.ts';
import type { ArraySpec, UnitSpec } from '../scenario/schema.ts';
import { fillPlaneIrradiance, planeView } from '../sky/plane-of-array.ts';
import type { Daylight, SunTrack } from '../sky/sun-table.ts';
import type { Plane } from '../sky/sun-direction.ts';
import type { WeatherDraw } from '../weather/weather-draw.ts';
import type { UnitSolar } from './prepared-draw.ts';
import { createSolarMinutes, sumUpSolar } from './solar-minutes.ts';
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
    availableW: new Float32Array(minutes),
    ...createSolarMinutes(minutes),
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
  const { availableW, usableW } = solar;
  const inputLimitW = unit.solar?.inputLimitW ?? 0;
  const arrays = unit.solar?.arrays ?? [];
  const lights = arrays.map((array) => planeWm2[planeOf(array, planes)]!);
  // portable panels lie in the cupboard instead of under snow
  const covers = arrays.map(({ outDuring }) =>
    outDuring === undefined ? weather.snowOnPanels : stowedMinutes(outDuring, clock),
  );
  const { dryBulbC, windMs } = weather;
  let dark = 0;
  for (let s = 0; s < daylight.count; s++) {
    const from = daylight.from[s]!;
    const to = daylight.to[s]!;
    availableW.fill(0, dark, to);
    usableW.fill(0, dark, from);
    for (let a = 0; a < arrays.length; a++)
      addArrayW(lights[a]!, dryBulbC, windMs, covers[a]!, arrays[a]!, availableW, from, to);
    clipToInput(availableW, inputLimitW, usableW, from, to);
    dark = to;
  }
  availableW.fill(0, dark);
  usableW.fill(0, dark);
  sumUp(solar, daylight);
}

function planeOf(array: ArraySpec, planes: readonly Plane[]): number {
  return planes.findIndex((p) => p.tiltDeg === array.tiltDeg && p.azimuthDeg === array.azimuthDeg);
}

/** Minute after minute in one sum over the whole outage. */
function sumUp(solar: UnitSolar, daylight: Daylight): void {
  const { availableW, wminBefore } = solar;
  sumUpSolar(solar, daylight);
  const usable = wminBefore[availableW.length]!;
  let available = 0;
  for (let s = 0; s < daylight.count; s++) {
    const to = daylight.to[s]!;
    for (let m = daylight.from[s]!; m < to; m++) available += availableW[m]!;
  }
  solar.availableWh = available / 60;
  solar.clippedWh = (available - usable) / 60;
}
