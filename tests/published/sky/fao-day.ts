/**
 * The sun of a calendar day as FAO-56 has it: what daily clearness in the climate normals is measured against.
 * Source: Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, ch. 3, eqs. 21, 23, 24, 34.
 * Declination is within 0.7° of the true one; for the minute-by-minute sky use `sunPosition`.
 */
import { cos, sin } from '../../../packages/sim/src/portable/elementary.ts';
import { extraterrestrialDayWhm2 } from './level-day.ts';

/** 0.0820 MJ/m²min in W/m². */
const FAO_SOLAR_CONSTANT_WM2 = 82000 / 60;

/** @param dayOfYear 1…365 (366). */
function faoDeclinationDeg(dayOfYear: number): number {
  return (0.409 * sin((2 * Math.PI * dayOfYear) / 365 - 1.39) * 180) / Math.PI;
}

/** Squared ratio of mean to actual distance of the sun. */
function faoDistanceFactor(dayOfYear: number): number {
  return 1 + 0.033 * cos((2 * Math.PI * dayOfYear) / 365);
}

/** Daily sum on a level plane above the air, Wh/m²: H0 of the daily clearness index Kt = GHI / H0. */
export function faoExtraterrestrialDayWhm2(latitudeDeg: number, dayOfYear: number): number {
  return extraterrestrialDayWhm2(
    latitudeDeg,
    faoDeclinationDeg(dayOfYear),
    faoDistanceFactor(dayOfYear),
    FAO_SOLAR_CONSTANT_WM2,
  );
}
