import { normalDensity } from '../chance/normal-deviate.ts';

/**
 * Standard normal probability of being at most `x`, by the series of Marsaglia 2004, J. Stat. Softw. 11(4); absolute
 * error below 10⁻¹⁵.
 */
export function normalProbability(x: number): number {
  if (x > 8) return 1;
  if (x < -8) return 0;
  let sum = x;
  let term = x;
  for (let k = 3, before = 0; sum !== before; k += 2) {
    before = sum;
    term *= (x * x) / k;
    sum += term;
  }
  return 0.5 + sum * normalDensity(x);
}
