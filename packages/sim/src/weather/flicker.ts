/** Clearness of the 60 minutes of an hour about the hour’s own. MODEL.md §Weather, W4. */
import type { Stream } from '../chance/streams.ts';
import { exp } from '../portable/elementary.ts';
import { FAST_MINUTE_LAG1, hourSpread, slowFlickerFraction, SLOW_MINUTE_LAG1 } from './minute-variability.ts';

/** What runs on from hour to hour. */
export interface FlickerState {
  slow: number;
  fast: number;
}

const SLOW_STEP = Math.sqrt(3 * (1 - SLOW_MINUTE_LAG1 * SLOW_MINUTE_LAG1));
const FAST_STEP = Math.sqrt(3 * (1 - FAST_MINUTE_LAG1 * FAST_MINUTE_LAG1));
/** Clearness under thick cloud and in the gaps, between which broken skies switch. */
const UNDER_CLOUD = 0.2;
const IN_GAPS = 0.8;
/** A cloud's bright edge can lift a minute this far above a clear sky (measured: kc > 1.2 in 2 to 4 % of minutes). */
const CLOUD_EDGE = 1.35;
/** Haurwitz clear sky over the solar constant: 1098 / 1367. */
const CLEAR_SHARE = 0.803;
/** The darkest minute keeps this share of its hour. */
const LEAST_OF_HOUR = 0.2;

/** The clearest a minute can be, at the hour's mean sine of elevation. */
export function clearestMinute(clearness: number, sinElevation: number): number {
  const clear = CLEAR_SHARE * exp(-0.057 / Math.max(sinElevation, 0.03));
  return Math.max(CLOUD_EDGE * clear, 1.05 * clearness);
}

/**
 * Fills `out` with minute clearness whose mean, weighted by the sun's height, is the hour's exactly.
 *
 * Two autoregressions, slow and fast, are added, bent into two levels as far as the hour is unsteady (gaps and cloud),
 * centred, scaled to the hour's spread, and scaled down where they would leave the bounds: so the mean needs no repair.
 * Takes 121 numbers from the stream whatever the hour.
 *
 * @param minuteCosZenith of the day; the hour is the 60 from `from`.
 */
export function fillFlicker(
  clearness: number,
  sinElevation: number,
  minuteCosZenith: Float32Array,
  from: number,
  state: FlickerState,
  stream: Stream,
  out: Float64Array,
): void {
  const spread = hourSpread(clearness, stream());
  const slowFraction = slowFlickerFraction(clearness);
  const slowWeight = Math.sqrt(slowFraction);
  const fastWeight = Math.sqrt(1 - slowFraction);
  const inGaps = Math.min(0.9, Math.max(0.1, (clearness - UNDER_CLOUD) / (IN_GAPS - UNDER_CLOUD)));
  const lean = 2.5 * (inGaps - 0.5); // the normal number with this share below it, nearly
  const unsteady = spread / ((IN_GAPS - UNDER_CLOUD) * Math.sqrt(inGaps * (1 - inGaps)));
  const bend = 0.2 + 4 * unsteady * unsteady * unsteady;
  let { slow, fast } = state;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < 60; i++) {
    slow = SLOW_MINUTE_LAG1 * slow + SLOW_STEP * (2 * stream() - 1);
    fast = FAST_MINUTE_LAG1 * fast + FAST_STEP * (2 * stream() - 1);
    const value = slowWeight * slow + fastWeight * fast;
    out[i] = value;
    sum += value;
    squares += value * value;
  }
  const centre = sum / 60;
  const stretch = bend / Math.sqrt(squares / 60 - centre * centre);
  let weightSum = 0;
  let valueSum = 0;
  let least = 1;
  let most = -1;
  let sunlit = 0;
  sum = 0;
  squares = 0;
  for (let i = 0; i < 60; i++) {
    const bent = stretch * (out[i]! - centre) + bend * lean;
    const value = bent / Math.sqrt(1 + bent * bent);
    out[i] = value;
    const weight = minuteCosZenith[from + i]!;
    if (weight <= 0) continue;
    weightSum += weight;
    valueSum += weight * value;
    sum += value;
    squares += value * value;
    sunlit++;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  state.slow = slow;
  state.fast = fast;
  const mean = valueSum / weightSum;
  const variance = squares / sunlit - (sum / sunlit) * (sum / sunlit);
  let scale = sunlit > 1 && variance > 1e-12 ? spread / Math.sqrt(variance) : 0;
  const above = most - mean;
  const below = mean - least;
  const room = clearestMinute(clearness, sinElevation) - clearness;
  if (scale * above > room) scale = room / above;
  if (scale * below > (1 - LEAST_OF_HOUR) * clearness) scale = ((1 - LEAST_OF_HOUR) * clearness) / below;
  for (let i = 0; i < 60; i++) out[i] = clearness + scale * (out[i]! - mean);
}
