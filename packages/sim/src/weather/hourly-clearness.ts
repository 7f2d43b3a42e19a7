/** Clearness of the hours of a day whose daily clearness is known. MODEL.md §Weather, W3. */
import type { Stream } from '../chance/streams.ts';
import { cosDeg } from '../sky/angles.ts';
import { exp } from '../portable/elementary.ts';
import type { DaySky } from './day-sky.ts';
import { normalDeviate } from '../chance/normal-deviate.ts';

/**
 * Constants of a day in the time-dependent autoregressive Gaussian model (TAG).
 * Source of the form and of the mean: Aguiar & Collares-Pereira 1992, Solar Energy 49:167. Its spread and persistence
 * were found too quiet against hours measured since (residual spread 0.087 against 0.14 to 0.19 on days of clearness
 * 0.5 to 0.6; correlation from hour to hour 0.26 against 0.5), so these two are fitted anew: see `SPREADS`.
 */
export interface HourlyLaw {
  readonly floor: number;
  readonly height: number;
  readonly thickness: number;
  readonly spread: number;
  readonly spreadAtLowSun: number;
}

/**
 * Spread of the latent hour at high sun for days of clearness 0, 0.1, … 0.8. Fitted so that the residual spread by class
 * of day lies between that of Lyngby (DTU, 13,155 measured hours) and of Golden (SRRL, 3,669), nearer the former.
 */
const SPREADS = [0.001, 0.031, 0.14, 0.2, 0.25, 0.265, 0.17, 0.055, 0.015] as const;
/** Correlation of the latent hour with the next. The days' fixed totals bring it down to the measured 0.5 (published: 0.54 ± 0.14, Graham & Hollands 1990, Solar Energy 44:333). */
const LAG1 = 0.82;

export function hourlyLaw(k: number): HourlyLaw {
  const at = Math.min(10 * Math.max(0, k), SPREADS.length - 1.001);
  const below = Math.floor(at);
  const fromMiddle = k - 0.45;
  return {
    floor: -0.19 + 1.12 * k + 0.24 * exp(-8 * k), // λ
    height: 0.32 - 1.6 * (k - 0.5) * (k - 0.5), // ε
    thickness: 0.19 + k * k * (2.27 - 2.51 * k), // κ
    spread: SPREADS[below]! + (at - below) * (SPREADS[below + 1]! - SPREADS[below]!),
    spreadAtLowSun: 1.5 * fromMiddle * fromMiddle + 8 * k * k * k * k * k, // half the published B
  };
}

/** Mean clearness of an hour: ktm = λ + ε e^(−κ / sin h). @param sinElevation of the sun, 0…1. */
export function meanHourClearness(law: HourlyLaw, sinElevation: number): number {
  return law.floor + law.height * exp(-law.thickness / Math.max(sinElevation, 0.01));
}

/** Standard deviation of the same: σ = A e^(B (1 − sin h)). */
export function hourClearnessSpread(law: HourlyLaw, sinElevation: number): number {
  return law.spread * exp(law.spreadAtLowSun * (1 - sinElevation));
}

const CLEAREST = 0.82;
/** 0.82 cos[π (t − 12) / 30] with t, 0…24, at the middle of each hour. */
const CLEAREST_HOURS = Float64Array.from(
  { length: 24 },
  (_, hour) => CLEAREST * cosDeg(6 * (hour + 0.5 - 12)),
);

/**
 * The clearest an hour can be: 0.82 cos[π (t − 12) / 30], but 1.1 times the day's own where that is more. Published with
 * 0.88, which 99 % of measured hours stay well below (0.78 at Lyngby, 0.86 at Golden).
 *
 * @param solarHour 0…23; t is at its middle.
 */
export function clearestHour(dayClearness: number, solarHour: number): number {
  return Math.max(CLEAREST_HOURS[solarHour]!, 1.1 * dayClearness);
}

const MOST_TRIES = 12;
const INNOVATION = Math.sqrt(1 - LAG1 * LAG1);

/**
 * Fills 24 hours from `at`: the autoregression through the sunlit hours, each drawn again until it lies between 0 and
 * the clearest, then all scaled so that the day's total is the given clearness. Dark hours take the day's.
 *
 * @param dayClearness daily Kt, 0.02…0.85.
 */
export function fillHourlyClearness(
  dayClearness: number,
  sky: DaySky,
  stream: Stream,
  out: Float64Array,
  at: number,
): void {
  const law = hourlyLaw(dayClearness);
  let state = 0;
  let first = true;
  for (let hour = 0; hour < 24; hour++) {
    out[at + hour] = dayClearness;
    const sinElevation = sky.hourCosZenith[hour]!;
    if (sinElevation <= 0) continue;
    const mean = meanHourClearness(law, sinElevation);
    const spread = hourClearnessSpread(law, sinElevation);
    const most = clearestHour(dayClearness, hour);
    let next = 0;
    let clearness = 0;
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const z = normalDeviate(stream());
      next = first ? z : LAG1 * state + INNOVATION * z;
      clearness = mean + spread * next;
      if (clearness >= 0 && clearness <= most) break;
      clearness = Math.min(most, Math.max(0.01, clearness));
    }
    state = next;
    first = false;
    out[at + hour] = clearness;
  }
  scaleToDay(dayClearness, sky, out, at);
}

/** Scales the hours to the day's total; hours held at the clearest leave the rest to the others. */
function scaleToDay(dayClearness: number, sky: DaySky, out: Float64Array, at: number): void {
  for (let round = 0; round < 4; round++) {
    let total = 0;
    for (let hour = 0; hour < 24; hour++) total += out[at + hour]! * sky.hourCosZenith[hour]!;
    if (total <= 0) return;
    const factor = (dayClearness * sky.dayCosZenith) / total;
    for (let hour = 0; hour < 24; hour++) {
      if (sky.hourCosZenith[hour]! <= 0) continue;
      const scaled = out[at + hour]! * factor;
      out[at + hour] = round < 3 ? Math.min(scaled, clearestHour(dayClearness, hour)) : scaled;
    }
    if (Math.abs(factor - 1) < 1e-9) return;
  }
}
