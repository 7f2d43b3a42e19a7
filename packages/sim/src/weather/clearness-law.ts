/** The published distribution of daily clearness about a month’s mean. MODEL.md §Weather, W1. */
import { exp, log, power } from '../portable/elementary.ts';

/** Cumulative share F(K) = [e^(γ min) − e^(γ K)] / [e^(γ min) − e^(γ max)] on min ≤ K ≤ max. */
export interface ClearnessLaw {
  readonly min: number;
  readonly max: number;
  readonly gamma: number;
}

const LEAST_CLEARNESS = 0.05;
/** Below this mean the published upper limit bends back (it falls under the mean itself near 0.09), so it is held. */
const LOWEST_FITTED_MEAN = 0.15;

/**
 * Clearest day of a month. Hollands & Huget 1983, Solar Energy 30:195 (Duffie & Beckman eq. 2.9.5).
 *
 * @param mean monthly mean clearness.
 */
export function clearestDay(mean: number): number {
  const m = Math.max(mean, LOWEST_FITTED_MEAN);
  return 0.6313 + 0.267 * m - 11.9 * power(Math.abs(m - 0.75), 8);
}

/**
 * Bendt, Collares-Pereira & Rabl 1981, Solar Energy 27:1 (Duffie & Beckman eqs. 2.9.2 to 2.9.6). The slope γ is the
 * exact root of the mean and not the fitted formula of the text, which misses the mean by up to 0.002.
 *
 * @param mean monthly mean clearness, 0.02…0.85.
 */
export function publishedClearnessLaw(mean: number): ClearnessLaw {
  const min = Math.min(LEAST_CLEARNESS, mean / 3);
  const max = Math.max(clearestDay(mean), mean + 0.01);
  let low = -400;
  let high = 400;
  while (high - low > 1e-10) {
    const gamma = (low + high) / 2;
    if (lawMean({ min, max, gamma }) < mean) low = gamma;
    else high = gamma;
  }
  return { min, max, gamma: (low + high) / 2 };
}

function isFlat({ min, max, gamma }: ClearnessLaw): boolean {
  return Math.abs(gamma) * (max - min) < 1e-6;
}

/** Mean of the law; Duffie & Beckman eq. 2.9.4 solved for the mean. */
export function lawMean(law: ClearnessLaw): number {
  const { min, max, gamma } = law;
  if (isFlat(law)) return (min + max) / 2;
  const atMin = exp(gamma * (min - max)); // both divided by e^(γ max), which keeps them finite for γ > 0
  if (gamma > 0) return ((min - 1 / gamma) * atMin - (max - 1 / gamma)) / (atMin - 1);
  const atMax = exp(gamma * (max - min));
  return (min - 1 / gamma - (max - 1 / gamma) * atMax) / (1 - atMax);
}

/** The clearness below which a share `u` (0…1) of the days fall. */
export function lawQuantile(law: ClearnessLaw, u: number): number {
  const { min, max, gamma } = law;
  if (isFlat(law)) return min + u * (max - min);
  if (gamma > 0) return max + log((1 - u) * exp(gamma * (min - max)) + u) / gamma;
  return min + log(1 - u + u * exp(gamma * (max - min))) / gamma;
}
