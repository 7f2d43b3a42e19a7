import { expect } from 'vitest';

/** Fails unless `actual` is a number no further than `tolerance` from `expected`; the message shows both. */
export function within(
  actual: number | null | undefined,
  expected: number,
  tolerance: number,
  what: string,
): void {
  const gap = Math.abs((actual ?? NaN) - expected);
  expect(gap <= tolerance, `${what}: ${actual} against ${expected} ± ${tolerance}`).toBe(true);
}
