/** How far a minute's clearness may lie from its hour's. MODEL.md §Weather, W4. */
import { clearSkyGhiWm2 } from '../sky/clear-sky.ts';
import { SOLAR_CONSTANT_WM2 } from '../sky/extraterrestrial.ts';

/** A cloud's bright edge can lift a minute this far above a clear sky (measured: kc > 1.2 in 2 to 4 % of minutes). */
const CLOUD_EDGE = 1.35;
/** Below this sine of elevation the clear sky's clearness is held. */
const LOW_SUN = 0.03;
/** The darkest minute keeps this share of its hour. */
const LEAST_OF_HOUR = 0.2;

/** The clearest a minute can be, at the hour's mean sine of elevation. */
function clearestMinute(clearness: number, sinElevation: number): number {
  const up = Math.max(sinElevation, LOW_SUN);
  const clear = clearSkyGhiWm2(up) / (SOLAR_CONSTANT_WM2 * up);
  return Math.max(CLOUD_EDGE * clear, 1.05 * clearness);
}

/**
 * The scale, made smaller where a sunlit minute would else leave the bounds. Which minutes are the farthest out is
 * looked for only where it can matter: none lies outside -1 and 1, and most hours have room for that.
 *
 * @param minutes bent into levels between -1 and 1. @param mean of the sunlit ones, weighted.
 * @param minuteCosZenith of the day; the hour is the 60 from `from`.
 */
export function withinBounds(
  scale: number,
  minutes: Float64Array,
  mean: number,
  minuteCosZenith: Float32Array,
  from: number,
  clearness: number,
  sinElevation: number,
): number {
  const roomAbove = clearestMinute(clearness, sinElevation) - clearness;
  const roomBelow = (1 - LEAST_OF_HOUR) * clearness;
  let most = 1;
  let least = -1;
  if (scale * (most - mean) > roomAbove) {
    most = -1;
    for (let i = 0; i < 60; i++) {
      if (minuteCosZenith[from + i]! > 0 && minutes[i]! > most) most = minutes[i]!;
    }
    if (scale * (most - mean) > roomAbove) scale = roomAbove / (most - mean);
  }
  if (scale * (mean - least) > roomBelow) {
    least = 1;
    for (let i = 0; i < 60; i++) {
      if (minuteCosZenith[from + i]! > 0 && minutes[i]! < least) least = minutes[i]!;
    }
    if (scale * (mean - least) > roomBelow) scale = roomBelow / (mean - least);
  }
  return scale;
}
