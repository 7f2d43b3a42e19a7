/** How far the air lifts the sun. */
import { power } from '../portable/elementary.ts';
import { tanDeg } from './angles.ts';

/** Refraction and half the sun's width: the sun's centre is this far below level when its upper edge rises, degrees. */
export const SUNRISE_DEPRESSION_DEG = 0.8333;

/** Standard atmosphere, hPa (ICAO 1993; ISO 2533), up to 11 km. */
export function standardPressureHPa(elevationM: number): number {
  return 1013.25 * power(1 - 2.25577e-5 * elevationM, 5.25588);
}

/**
 * Degrees to add to the true elevation; 0 while the whole sun is below the horizon.
 * Source: Reda & Andreas 2004, Solar Energy 76:577, eq. 42 (after Sæmundsson; Meeus (16.4)).
 */
export function refractionDeg(elevationDeg: number, pressureHPa: number, airC: number): number {
  if (elevationDeg < -SUNRISE_DEPRESSION_DEG) return 0;
  const bend = 1.02 / (60 * tanDeg(elevationDeg + 10.3 / (elevationDeg + 5.11)));
  return (pressureHPa / 1010) * (283 / (273 + airC)) * bend;
}
