import { mean, sampleStandardDeviation } from 'simple-statistics';
import { Z_95 } from './normal-quantile.ts';
import type { Estimate } from './study-summary.ts';

/** What the same draws say about two ways of running the house. */
export interface PairedRuntimes {
  /** Mean of first − second, in the unit of the input, with the normal interval of the paired differences. */
  readonly meanDifference: Estimate;
  readonly firstLongerFraction: number;
  readonly secondLongerFraction: number;
}

/**
 * Paired comparison of runtimes cut off at the horizon. MODEL.md, Statistics, S7. The mean difference is that of the
 * restricted means, so it understates a gain that lies past the horizon; two runs cut off there count as equal.
 *
 * @param first, second aligned by draw, the same length ≥ 1; censored ones hold the horizon.
 */
export function pairedRuntimes(first: Float64Array, second: Float64Array): PairedRuntimes {
  const differences = Array.from(first, (value, i) => value - second[i]!);
  const share = (longer: (d: number) => boolean) => differences.filter(longer).length / differences.length;
  return {
    meanDifference: meanWithInterval(differences),
    firstLongerFraction: share((d) => d > 0),
    secondLongerFraction: share((d) => d < 0),
  };
}

/** Mean ± 1.96 standard errors; the limits are null for a single value, which says nothing of its scatter. */
function meanWithInterval(values: number[]): Estimate {
  const value = mean(values);
  if (values.length < 2) return { value, low: null, high: null };
  const reach = (Z_95 * sampleStandardDeviation(values)) / Math.sqrt(values.length);
  return { value, low: value - reach, high: value + reach };
}
