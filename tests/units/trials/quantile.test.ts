import { describe, expect, it } from 'vitest';
import { daysReachedBy, timeReachedBy } from '../../../packages/sim/src/trials/quantile.ts';
import { kaplanMeier } from '../../../packages/sim/src/trials/survival.ts';

const upTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);

describe('timeReachedBy', () => {
  it.each([10, 20, 50, 200, 1000, 3000])(
    'is a time that nine in ten of %i runs do reach, and no later one is',
    (n) => {
      const times = upTo(n);
      const table = kaplanMeier(
        times,
        times.map(() => 0),
      );
      const reached = timeReachedBy(0.9, table.time, table.survival)!;
      const share = (t: number) => times.filter((time) => time >= t).length / n;
      expect(share(reached)).toBeGreaterThanOrEqual(0.9);
      expect(share(reached + 1)).toBeLessThan(0.9);
    },
  );

  it('is null while the curve has not fallen below the share', () => {
    const table = kaplanMeier([1, 9, 9, 9, 9, 9, 9, 9, 9, 9], [0, 1, 1, 1, 1, 1, 1, 1, 1, 1]);
    expect(timeReachedBy(0.9, table.time, table.survival)).toBeNull(); // exactly 0.9 reach past the horizon
    expect(timeReachedBy(0.91, table.time, table.survival)).toBe(1);
  });

  it('is 0 when even the start lies below the share', () =>
    expect(timeReachedBy(0.9, [1], [0.5], 0.8)).toBe(0));
});

describe('daysReachedBy', () => {
  it('gives days with limits in order', () => {
    const { value, low, high } = daysReachedBy(
      0.9,
      kaplanMeier(
        upTo(200),
        upTo(200).map(() => 0),
      ),
      24,
    );
    expect(value).toBe(21 / 24);
    expect([low, high]).toEqual([12 / 24, 29 / 24]);
  });

  it('may know the lower limit alone when the horizon hides the rest', () => {
    const times = [...upTo(5), ...new Array<number>(95).fill(300)];
    const estimate = daysReachedBy(
      0.9,
      kaplanMeier(
        times,
        times.map((t) => (t === 300 ? 1 : 0)),
      ),
      1,
    );
    expect(estimate.value).toBeNull();
    expect(estimate.high).toBeNull();
    expect(estimate.low).toBe(4); // four of a hundred ended: the lower limit passes 0.9
  });

  it('says 0 as the lower limit when there are too few draws to tell', () => {
    expect(daysReachedBy(0.9, kaplanMeier([9, 9], [1, 1]), 1)).toEqual({ value: null, low: 0, high: null });
  });
});
