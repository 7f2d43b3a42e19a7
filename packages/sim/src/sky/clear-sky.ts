/** What reaches level ground under a cloudless sky. */
import { exp } from '../portable/elementary.ts';

/**
 * Global horizontal irradiance of a clear sky, W/m²; 0 with the sun down.
 * Source: Haurwitz 1945, J. Meteorology 2:154, in the form reviewed by Reno, Hansen & Stein 2012, SAND2012-2389:
 * 1098 cos z exp(-0.057 / cos z). Texts give 0.057 or 0.059, 0.2 % apart at noon; 0.057 here. No term for height or
 * haze: at 1,800 m real clear skies reach 1.0 to 1.2 times this.
 *
 * @param cosZenith of the sun's centre.
 */
export function clearSkyGhiWm2(cosZenith: number): number {
  return cosZenith > 0 ? 1098 * cosZenith * exp(-0.057 / cosZenith) : 0;
}
