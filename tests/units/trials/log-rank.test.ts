import { describe, expect, it } from 'vitest';
import { logRank } from '../../../packages/sim/src/trials/log-rank.ts';

const group = (times: number[], censored = times.map(() => 0)) => ({
  times: Object.freeze(times),
  censored: Object.freeze(censored),
});

describe('logRank', () => {
  it('finds nothing between two equal groups', () => {
    const test = logRank(group([1, 2, 3, 4]), group([1, 2, 3, 4]));
    expect(test.observedFirst - test.expectedFirst).toBeCloseTo(0, 12);
    expect(test.chiSquare).toBeCloseTo(0, 12);
  });

  it('is the same whichever group comes first', () => {
    const [a, b] = [group([1, 5, 6, 9], [0, 0, 1, 0]), group([2, 3, 3, 4])];
    expect(logRank(b, a).chiSquare).toBeCloseTo(logRank(a, b).chiSquare, 12);
    expect(logRank(b, a).expectedSecond).toBeCloseTo(logRank(a, b).expectedFirst, 12);
  });

  it('expects as many ends in all as there were', () => {
    const test = logRank(group([1, 5, 6, 9], [0, 0, 1, 0]), group([2, 3, 3, 4]));
    expect(test.expectedFirst + test.expectedSecond).toBeCloseTo(7, 12);
  });

  it('tells nothing when nobody ended', () =>
    expect(logRank(group([9], [1]), group([9], [1])).chiSquare).toBe(0));
});
