import { mean, sampleStandardDeviation } from 'simple-statistics';
import { Z_95 } from './normal-quantile.ts';
import type { Estimate } from './study-summary.ts';

/**
 * Mean of first − second over the same draws ± 1.96 standard errors of the paired differences. MODEL.md, Statistics, S7.
 * Of runtimes cut off at the horizon it is the difference of the restricted means: it understates a gain that lies past
 * the horizon.
 *
 * @param first, second aligned by draw, the same length ≥ 1; censored runtimes hold the horizon
 * @returns in the unit of the input; limits are null for a single draw, which says nothing of its scatter
 */
export function meanPairedDifference(first: Float64Array, second: Float64Array): Estimate {
  const differences = Array.from(first, (value, i) => value - second[i]!);
  const value = mean(differences);
  if (differences.length < 2) return { value, low: null, high: null };
  const reach = (Z_95 * sampleStandardDeviation(differences)) / Math.sqrt(differences.length);
  return { value, low: value - reach, high: value + reach };
}

/** Shares of the draws in which each lasts longer than the other; two runs cut off at the horizon count as equal. */
export function longerFractions(
  first: Float64Array,
  second: Float64Array,
): { readonly firstLongerFraction: number; readonly secondLongerFraction: number } {
  const share = (longer: Float64Array, other: Float64Array) =>
    longer.filter((value, i) => value > other[i]!).length / longer.length;
  return { firstLongerFraction: share(first, second), secondLongerFraction: share(second, first) };
}
