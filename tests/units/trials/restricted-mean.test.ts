import { describe, expect, it } from 'vitest';
import { restrictedMean } from '../../../packages/sim/src/trials/restricted-mean.ts';
import { kaplanMeier } from '../../../packages/sim/src/trials/survival.ts';

describe('restrictedMean', () => {
  it('is the mean of runs cut off at the limit when only the limit cuts them off', () => {
    const times = [2, 4, 7, 10, 10];
    const { mean, standardError } = restrictedMean(kaplanMeier(times, [0, 0, 0, 1, 1]), 10);
    expect(mean).toBeCloseTo(6.6, 12);
    const populationVariance = times.reduce((sum, t) => sum + (t - 6.6) ** 2, 0) / 5;
    expect(standardError).toBeCloseTo(Math.sqrt(populationVariance / 5), 12);
  });

  it('stops at the limit even when runs ended later', () => {
    expect(restrictedMean(kaplanMeier([1, 20], [0, 0]), 3).mean).toBeCloseTo(2, 12);
  });

  it('is the limit itself while nothing has ended', () => {
    expect(restrictedMean(kaplanMeier([5], [1]), 5)).toEqual({ mean: 5, standardError: 0 });
  });
});
