import { describe, expect, it } from 'vitest';
import { Z_95 } from '../../../packages/sim/src/trials/normal-quantile.ts';
import { pairedRuntimes } from '../../../packages/sim/src/trials/paired.ts';

describe('pairedRuntimes', () => {
  it('uses the scatter of the differences, not of the runtimes', () => {
    const { meanDifference } = pairedRuntimes(Float64Array.of(11, 102, 1003), Float64Array.of(10, 100, 1000));
    expect(meanDifference.value).toBe(2);
    expect(meanDifference.high! - 2).toBeCloseTo(Z_95 / Math.sqrt(3), 12); // differences 1, 2, 3: standard deviation 1
    expect(meanDifference.low! + meanDifference.high!).toBeCloseTo(4, 12);
  });

  it('counts who lasts longer; equal ones count for neither', () => {
    const paired = pairedRuntimes(Float64Array.of(5, 5, 1, 9), Float64Array.of(4, 5, 2, 1));
    expect([paired.firstLongerFraction, paired.secondLongerFraction]).toEqual([0.5, 0.25]);
  });

  it('turns its sign when the two change places', () => {
    const [a, b] = [Float64Array.of(3, 8, 2), Float64Array.of(1, 9, 9)];
    const [ab, ba] = [pairedRuntimes(a, b).meanDifference, pairedRuntimes(b, a).meanDifference];
    expect([ab.value, ab.low, ab.high]).toEqual([-ba.value!, -ba.high!, -ba.low!]);
  });

  it('gives no limits for a single draw', () => {
    expect(pairedRuntimes(Float64Array.of(3), Float64Array.of(1)).meanDifference).toEqual({
      value: 2,
      low: null,
      high: null,
    });
  });
});
