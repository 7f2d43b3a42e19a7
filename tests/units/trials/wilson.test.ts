import { describe, expect, it } from 'vitest';
import { wilson } from '../../../packages/sim/src/trials/wilson.ts';

describe('wilson', () => {
  it('knows nothing without trials', () =>
    expect(wilson(0, 0)).toEqual({ value: null, low: null, high: null }));

  it('mirrors: limits of k in n and of n − k in n add up to 1', () => {
    let compared = 0;
    for (const n of [1, 7, 50, 200]) {
      for (let k = 0; k <= n; k += 1) {
        expect(wilson(k, n).low! + wilson(n - k, n).high!).toBeCloseTo(1, 12);
        compared += 1;
      }
    }
    expect(compared).toBe(262);
  });

  it('touches 0 and 1 only where nothing or everything was counted', () => {
    expect(wilson(0, 9).low).toBe(0);
    expect(wilson(9, 9).high).toBe(1);
    expect(wilson(1, 9).low).toBeGreaterThan(0);
    expect(wilson(8, 9).high).toBeLessThan(1);
  });
});
