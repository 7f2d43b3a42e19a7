/** Degrees in and out of the portable functions. Radians never leave `sky`. */
import { acos, atan2, cos, sin, tan } from '../portable/elementary.ts';

const RADIANS_PER_DEGREE = Math.PI / 180;

export const sinDeg = (deg: number): number => sin(deg * RADIANS_PER_DEGREE);
export const cosDeg = (deg: number): number => cos(deg * RADIANS_PER_DEGREE);
export const tanDeg = (deg: number): number => tan(deg * RADIANS_PER_DEGREE);
/** 0…180; arguments outside [-1, 1] are taken as the nearer end. */
export const acosDeg = (x: number): number => acos(x) / RADIANS_PER_DEGREE;
/** -180…180, of the point (x, y). */
export const atan2Deg = (y: number, x: number): number => atan2(y, x) / RADIANS_PER_DEGREE;

/** The same angle in [0, 360). */
export function fullTurn(deg: number): number {
  const turned = deg - 360 * Math.floor(deg / 360);
  return turned < 360 ? turned : 0;
}

/** The same angle in [-180, 180). */
export const halfTurn = (deg: number): number => fullTurn(deg + 180) - 180;
