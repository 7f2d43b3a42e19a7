/** How far found shares lie from exact ones. */
import { atMost } from '../comparison.ts';

export const SEEDS = ['one', 'two', 'three'] as const;
export const LARGEST_GAP = atMost(4.5);
/** Largest gap between found and exact shares, in standard errors. Where the exact share is 0 or 1, any gap is too large. */
export function largestGap(found: readonly number[], exact: readonly number[], n: number): number {
  return Math.max(
    ...exact.map((share, i) => {
      const gap = Math.abs(found[i]! - share);
      if (gap < 1e-9) return 0;
      return gap / Math.sqrt((share * (1 - share)) / n);
    }),
  );
}

/** 1 … days. */
export const dayNumbers = (days: number) => Array.from({ length: days }, (_, k) => k + 1);
