import { Z_95 } from './normal-quantile.ts';
import type { Estimate } from './study-summary.ts';

/**
 * A share and its Wilson score interval (95 %, no continuity correction). MODEL.md, Statistics, S6.
 * It stays inside [0, 1] and does not collapse at 0 or at `trials`, unlike share ± z·se.
 * Source: E. B. Wilson 1927, J. Am. Stat. Assoc. 22:209–212; Newcombe 1998, Stat. Med. 17:857–872, method 3.
 *
 * @param successes whole number, 0 … trials.
 * @param trials whole number; with 0 trials nothing is known and every field is null.
 */
export function wilson(successes: number, trials: number): Estimate {
  if (!(trials > 0)) return { value: null, low: null, high: null };
  const zz = Z_95 * Z_95;
  const failures = trials - successes;
  const middle = successes + zz / 2;
  const reach = Z_95 * Math.sqrt((successes * failures) / trials + zz / 4);
  return {
    value: successes / trials,
    low: successes === 0 ? 0 : (middle - reach) / (trials + zz),
    high: failures === 0 ? 1 : (middle + reach) / (trials + zz),
  };
}
