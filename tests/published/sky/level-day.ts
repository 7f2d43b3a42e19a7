/** A day by geometry alone (the sun's centre, no refraction): what published daily sums are worked out with. */
import { acosDeg, cosDeg, sinDeg, tanDeg } from '../../../packages/sim/src/sky/angles.ts';
import { SOLAR_CONSTANT_WM2 } from '../../../packages/sim/src/sky/extraterrestrial.ts';

/**
 * Degrees from solar noon to sunset: 0 in polar night, 180 in polar day. FAO-56 eq. 25; Duffie & Beckman eq. 1.6.10.
 */
export function sunsetHourAngleDeg(latitudeDeg: number, declinationDeg: number): number {
  return acosDeg(-tanDeg(latitudeDeg) * tanDeg(declinationDeg));
}

/**
 * Daily sum on a level plane above the air, Wh/m²; 0 in polar night.
 * FAO Irrigation and Drainage Paper 56 eq. 21; Duffie & Beckman eq. 1.10.3.
 *
 * @param distanceFactor squared ratio of mean to actual distance of the sun, near 1.
 */
export function extraterrestrialDayWhm2(
  latitudeDeg: number,
  declinationDeg: number,
  distanceFactor: number,
  solarConstantWm2: number = SOLAR_CONSTANT_WM2,
): number {
  const sunsetDeg = sunsetHourAngleDeg(latitudeDeg, declinationDeg);
  const sunsetRadians = (sunsetDeg * Math.PI) / 180;
  const flat =
    sunsetRadians * sinDeg(latitudeDeg) * sinDeg(declinationDeg) +
    cosDeg(latitudeDeg) * cosDeg(declinationDeg) * sinDeg(sunsetDeg);
  return Math.max(0, (24 / Math.PI) * solarConstantWm2 * distanceFactor * flat);
}
