import { describe, expect, it } from 'vitest';
import { kaplanMeier, lowAtStart, survivalCurve } from '../../../packages/sim/src/trials/survival.ts';

describe('kaplanMeier', () => {
  it('is the plain share still running when nothing is censored', () => {
    const table = kaplanMeier([3, 1, 2, 2], [0, 0, 0, 0]);
    expect([...table.time]).toEqual([1, 2, 3]);
    expect([...table.atRisk]).toEqual([4, 3, 1]);
    expect([...table.events]).toEqual([1, 2, 1]);
    expect([...table.survival].map((s) => s.toFixed(12))).toEqual([
      '0.750000000000',
      '0.250000000000',
      '0.000000000000',
    ]);
  });

  it('has the binomial standard error when nothing is censored', () => {
    const table = kaplanMeier([1, 2, 3, 4, 5], [0, 0, 0, 0, 0]);
    [0.8, 0.6, 0.4, 0.2, 0].forEach((s, i) =>
      expect(table.standardError[i]).toBeCloseTo(Math.sqrt((s * (1 - s)) / 5), 12),
    );
  });

  it('counts a run that is cut off when another ends as still running then', () => {
    const table = kaplanMeier([2, 2, 5], [0, 1, 0]);
    expect([...table.atRisk]).toEqual([3, 1]);
  });

  it.each([
    [[1, -1], [0, 0], 'times: found -1 at 1; expected numbers of at least 0'],
    [[NaN, 1], [1, 0], 'times: found NaN at 0; expected numbers of at least 0'],
    [[1, 2], [0], 'censored: found a length of 1; expected that of times, 2'],
  ])('refuses the times %j with %j', (times, censored, told) => {
    expect(() => kaplanMeier(times, censored)).toThrow(new RangeError(told));
  });

  it('does not care about the order of the runs', () => {
    const forward = kaplanMeier([5, 1, 4, 4, 2], [1, 0, 0, 1, 0]);
    const backward = kaplanMeier([2, 4, 4, 1, 5], [0, 1, 0, 0, 1]);
    expect(backward).toEqual(forward);
  });

  it('leaves its input as it was', () => {
    const times = Object.freeze([3, 1, 2]);
    const censored = Object.freeze([0, 1, 0]);
    expect(() => kaplanMeier(times, censored)).not.toThrow();
  });

  it('has no steps when every run is cut off or there is none', () => {
    expect(kaplanMeier([7, 7], [1, 1]).time).toHaveLength(0);
    expect(kaplanMeier([], []).time).toHaveLength(0);
  });

  it('has limits around the curve that stay in [0, 1] and widen to Wilson’s where the log-log form ends', () => {
    const times = Array.from({ length: 40 }, (_, i) => 1 + ((i * 7) % 13));
    const table = kaplanMeier(
      times,
      times.map((_, i) => (i % 9 === 0 ? 1 : 0)),
    );
    let compared = 0;
    table.survival.forEach((s, i) => {
      expect(table.low[i]).toBeGreaterThanOrEqual(0);
      expect(table.low[i]).toBeLessThanOrEqual(s);
      expect(table.high[i]).toBeGreaterThanOrEqual(s);
      expect(table.high[i]).toBeLessThanOrEqual(1);
      compared += 1;
    });
    expect(compared).toBe(13);
    const emptied = kaplanMeier([1, 2], [0, 0]);
    expect(emptied.high[1]).toBeCloseTo(1 - lowAtStart(2), 12); // none of two, the mirror image of two of two
  });
});

describe('lowAtStart', () => {
  it('is far from certain after few draws: 0.8389 after 20, the Wilson limit of 20 in 20', () => {
    expect(lowAtStart(20)).toBeCloseTo(1 - 0.1611, 4);
  });
  it('is 0 when there are no draws', () => expect(lowAtStart(0)).toBe(0));
});

describe('survivalCurve', () => {
  it('of any number of runs without a cut is the very fraction still running, to the last bit of twelve places', () => {
    for (const n of [7, 60, 100, 240]) {
      const times = Array.from({ length: n }, (_, i) => i + 1);
      const { survival } = survivalCurve(kaplanMeier(times, new Uint8Array(n)), 1440);
      expect(survival).toEqual(Array.from({ length: n + 1 }, (_, i) => Number(((n - i) / n).toFixed(12))));
    }
  });

  it('starts at day 0 with everything running and converts the time unit', () => {
    const curve = survivalCurve(kaplanMeier([1440, 2880], [0, 1]), 1440);
    expect(curve.day).toEqual([0, 1]);
    expect(curve.survival).toEqual([1, 0.5]);
    expect(curve.low[0]).toBe(lowAtStart(2));
    expect(curve.high[0]).toBe(1);
  });
});
