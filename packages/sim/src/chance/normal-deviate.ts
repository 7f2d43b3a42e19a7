/** Standard normal deviates from uniform numbers: one in, one out, rising, so streams stay in step. */
import { exp, log } from '../portable/elementary.ts';

/**
 * The standard normal quantile.
 * Source: Wichura 1988, Algorithm AS 241 (PPND7), Applied Statistics 37:477; within 1e-7 of the exact value.
 *
 * @param u 0…1; the ends give about ∓8 instead of infinity.
 */
export function normalDeviate(u: number): number {
  const q = u - 0.5;
  if (q <= 0.425 && q >= -0.425) {
    const r = 0.180625 - q * q;
    return (
      (q * (((59.10937472 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)) /
      (((67.1875636 * r + 78.757757664) * r + 17.895169469) * r + 1)
    );
  }
  const tail = Math.max(q < 0 ? u : 1 - u, 1e-15);
  let r = Math.sqrt(-log(tail));
  let z: number;
  if (r <= 5) {
    r -= 1.6;
    z =
      (((0.17023821103 * r + 1.3067284816) * r + 2.75681539) * r + 1.4234372777) /
      ((0.12021132975 * r + 0.7370016425) * r + 1);
  } else {
    r -= 5;
    z =
      (((0.017337203997 * r + 0.42868294337) * r + 3.081226386) * r + 6.657905115) /
      ((0.012258202635 * r + 0.24197894225) * r + 1);
  }
  return q < 0 ? -z : z;
}

/** The standard normal density. */
export const normalDensity = (z: number): number => exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
