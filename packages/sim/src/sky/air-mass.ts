/** How much air the sunlight comes through. */
import { power } from '../portable/elementary.ts';
import { cosDeg } from './angles.ts';

/**
 * Relative to the air straight up: 1 overhead, 38 at the horizon, Infinity below it.
 * Source: Kasten & Young 1989, Applied Optics 28:4735. At the zenith the fit gives 0.9997.
 *
 * @param refractedZenithDeg as seen through the air, 0…90.
 */
export function relativeAirMass(refractedZenithDeg: number): number {
  if (refractedZenithDeg > 90) return Infinity;
  return 1 / (cosDeg(refractedZenithDeg) + 0.50572 * power(96.07995 - refractedZenithDeg, -1.6364));
}
