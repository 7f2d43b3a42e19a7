import { describe, expect, it } from 'vitest';
import { Z_95 } from '../../../packages/sim/src/trials/normal-quantile.ts';
import { longerFractions, meanPairedDifference } from '../../../packages/sim/src/trials/paired.ts';

describe('meanPairedDifference', () => {
  it('uses the scatter of the differences, not of the runtimes', () => {
    const difference = meanPairedDifference(Float64Array.of(11, 102, 1003), Float64Array.of(10, 100, 1000));
    expect(difference.value).toBe(2);
    expect(difference.high! - 2).toBeCloseTo(Z_95 / Math.sqrt(3), 12); // differences 1, 2, 3: standard deviation 1
    expect(difference.low! + difference.high!).toBeCloseTo(4, 12);
  });

  it('turns its sign when the two change places', () => {
    const [a, b] = [Float64Array.of(3, 8, 2), Float64Array.of(1, 9, 9)];
    const [ab, ba] = [meanPairedDifference(a, b), meanPairedDifference(b, a)];
    expect([ab.value, ab.low, ab.high]).toEqual([-ba.value!, -ba.high!, -ba.low!]);
  });

  it('gives no limits for a single draw', () => {
    expect(meanPairedDifference(Float64Array.of(3), Float64Array.of(1))).toEqual({
      value: 2,
      low: null,
      high: null,
    });
  });
});

describe('longerFractions', () => {
  it('counts who lasts longer; equal ones count for neither', () => {
    expect(longerFractions(Float64Array.of(5, 5, 1, 9), Float64Array.of(4, 5, 2, 1))).toEqual({
      firstLongerFraction: 0.5,
      secondLongerFraction: 0.25,
    });
  });
});
