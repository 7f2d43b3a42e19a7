/** Sunlight above the air. */
import { cosDeg, sinDeg } from './angles.ts';
import { sunsetHourAngleDeg } from './day-length.ts';

/**
 * W/m² at 1 au: the World Radiation Center value, as in Duffie & Beckman and in NREL's SOLPOS.
 * Newer measurement gives 1361.1 (Gueymard 2018). The older is kept on purpose: a clearness index only means something
 * with the constant it was made with, and the climate normals (FAO-56: 0.0820 MJ/m²min = 1366.7 W/m²) and the
 * published clearness and diffuse correlations were made with this one. Multiplied back, the 0.4 % cancels.
 */
export const SOLAR_CONSTANT_WM2 = 1367;

/** W/m² on a plane facing the sun, above the air. */
export function extraterrestrialNormalWm2(radiusVectorAu: number): number {
  return SOLAR_CONSTANT_WM2 / (radiusVectorAu * radiusVectorAu);
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
