import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { logNormalFactor, logNormalSigma } from '../../../packages/sim/src/usage/log-normal-factor.ts';

describe('logNormalFactor', () => {
  it.each([0.1, 0.15, 0.3, 1])('scatters by %d about a mean of 1', (fraction) => {
    const stream = streamsOf('factor', 0)('test');
    const sigma = logNormalSigma(fraction);
    const n = 40_000;
    const values = Array.from({ length: n }, () => logNormalFactor(stream, sigma));
    const mean = values.reduce((a, b) => a + b) / n;
    const sd = Math.sqrt(values.reduce((a, b) => a + (b - mean) * (b - mean), 0) / n);
    expect(Math.abs(mean - 1)).toBeLessThan((5 * fraction) / Math.sqrt(n));
    expect(Math.abs(sd / fraction - 1)).toBeLessThan(fraction === 1 ? 0.2 : 0.04);
    expect(Math.min(...values)).toBeGreaterThan(0);
  });

  it('is exactly 1 without scatter and still takes its one number from the stream', () => {
    let taken = 0;
    const counting = () => (taken++, 0.3);
    expect(logNormalFactor(counting, 0)).toBe(1);
    expect(taken).toBe(1);
    logNormalFactor(counting, 0.2);
    expect(taken).toBe(2);
  });
});
