/** The sun's direction over a site, and the angle at which it strikes a plane. */
import { cosDeg, sinDeg } from './angles.ts';

/** A unit vector: east, north and up. `up` is the cosine of the zenith angle. */
export interface SunDirection {
  readonly east: number;
  readonly north: number;
  readonly up: number;
}

/** A flat plane: tilt from horizontal 0…90 (or more), azimuth clockwise from north, in degrees. */
export interface Plane {
  readonly tiltDeg: number;
  readonly azimuthDeg: number;
}

/**
 * From declination and hour angle (positive after noon), all in degrees.
 * Duffie & Beckman, Solar Engineering of Thermal Processes, eq. 1.6.5 for `up`; the rest by the same rotation.
 */
export function sunDirection(
  latitudeDeg: number,
  declinationDeg: number,
  hourAngleDeg: number,
): SunDirection {
  return sunDirectionOver(sinDeg(latitudeDeg), cosDeg(latitudeDeg), declinationDeg, hourAngleDeg);
}

/** The same for a latitude whose sine and cosine are at hand. */
export function sunDirectionOver(
  sinLatitude: number,
  cosLatitude: number,
  declinationDeg: number,
  hourAngleDeg: number,
): SunDirection {
  const sinDeclination = sinDeg(declinationDeg);
  const cosDeclination = cosDeg(declinationDeg);
  const cosHour = cosDeg(hourAngleDeg);
  return {
    east: -cosDeclination * sinDeg(hourAngleDeg),
    north: cosLatitude * sinDeclination - sinLatitude * cosDeclination * cosHour,
    up: sinLatitude * sinDeclination + cosLatitude * cosDeclination * cosHour,
  };
}

/** The upward normal of a plane, in the same axes. */
export function planeNormal({ tiltDeg, azimuthDeg }: Plane): SunDirection {
  const level = sinDeg(tiltDeg);
  return { east: level * sinDeg(azimuthDeg), north: level * cosDeg(azimuthDeg), up: cosDeg(tiltDeg) };
}

/** Cosine of the angle between the sun and the plane's normal, -1…1; the sun is behind the plane below 0. */
export function cosIncidence(sun: SunDirection, plane: Plane): number {
  const normal = planeNormal(plane);
  return sun.east * normal.east + sun.north * normal.north + sun.up * normal.up;
}
