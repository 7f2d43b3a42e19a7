/** How long the day is, by geometry alone: the sun's centre, no refraction. */
import { acosDeg, tanDeg } from './angles.ts';

/**
 * Degrees from solar noon to sunset: 0 in polar night, 180 in polar day. FAO-56 eq. 25; Duffie & Beckman eq. 1.6.10.
 */
export function sunsetHourAngleDeg(latitudeDeg: number, declinationDeg: number): number {
  return acosDeg(-tanDeg(latitudeDeg) * tanDeg(declinationDeg));
}

/** Hours from sunrise to sunset, 0…24. FAO-56 eq. 34. */
export function dayLengthHours(latitudeDeg: number, declinationDeg: number): number {
  return sunsetHourAngleDeg(latitudeDeg, declinationDeg) / 7.5;
}
