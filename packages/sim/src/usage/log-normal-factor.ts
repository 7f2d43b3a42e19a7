/** Scatter about a mean that must stay the mean. MODEL.md §Usage, U1. */
import type { Stream } from '../chance/streams.ts';
import { exp, log } from '../portable/elementary.ts';
import { normalDeviate } from '../chance/normal-deviate.ts';

/**
 * Sigma of a log-normal whose standard deviation is `scatterFraction` of its mean: sqrt(ln(1 + f²)).
 *
 * @param scatterFraction ≥ 0.
 */
export function logNormalSigma(scatterFraction: number): number {
  return Math.sqrt(log(1 + scatterFraction * scatterFraction));
}

/**
 * One log-normal factor with mean 1: exp(sigma z - sigma²/2), z standard normal.
 *
 * @param u 0…1, uniform.
 * @param sigma from `logNormalSigma`; 0 gives exactly 1.
 */
export function logNormal(u: number, sigma: number): number {
  return sigma === 0 ? 1 : exp(sigma * (normalDeviate(u) - sigma / 2));
}

/** The same from a stream. Takes one uniform whatever sigma is, so turning scatter off or on never shifts the rest of it. */
export function logNormalFactor(stream: Stream, sigma: number): number {
  return logNormal(stream(), sigma);
}
