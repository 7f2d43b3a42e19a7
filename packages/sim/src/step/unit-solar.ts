/** The panels of every unit through one draw: where sky and power meet. MODEL.md §5. */
import { addArrayW, clipToInput } from '../power/solar-array.ts';
import type { UnitSpec } from '../scenario/schema.ts';
import { fillPlaneIrradiance, planeView } from '../sky/plane-of-array.ts';
import type { SunTrack } from '../sky/sun-table.ts';
import type { Plane } from '../sky/sun-direction.ts';
import type { WeatherDraw } from '../weather/weather-draw.ts';
import type { UnitSolar } from './prepared-draw.ts';

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
    usableW: new Float32Array(minutes),
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
  planes.forEach(({ tiltDeg }, i) => {
    fillPlaneIrradiance(
      track,
      i,
      planeView(tiltDeg),
      weather.ghiWm2,
      weather.dhiWm2,
      groundReflectance,
      out[i]!,
    );
  });
}

export function fillUnitSolar(
  solar: UnitSolar,
  unit: UnitSpec,
  planes: readonly Plane[],
  planeWm2: readonly Float32Array[],
  weather: WeatherDraw,
): void {
  const { availableW } = solar;
  availableW.fill(0);
  for (const array of unit.solar?.arrays ?? []) {
    const plane = planes.findIndex((p) => p.tiltDeg === array.tiltDeg && p.azimuthDeg === array.azimuthDeg);
    addArrayW(planeWm2[plane]!, weather.dryBulbC, weather.windMs, weather.snowOnPanels, array, availableW);
  }
  clipToInput(availableW, unit.solar?.inputLimitW ?? 0, solar.usableW);
  let available = 0;
  let usable = 0;
  for (let m = 0; m < availableW.length; m++) {
    available += availableW[m]!;
    usable += solar.usableW[m]!;
  }
  solar.availableWh = available / 60;
  solar.clippedWh = (available - usable) / 60;
}
