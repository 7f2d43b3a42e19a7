import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import {
  resampleCount,
  resampledDifference,
  resampledTimesReached,
} from '../../../packages/sim/src/trials/bootstrap.ts';
import { timeReachedBy } from '../../../packages/sim/src/trials/quantile.ts';
import { kaplanMeier } from '../../../packages/sim/src/trials/survival.ts';

const chance = () => streamsOf('bootstrap test', 0)('resamples');
const cell = (times: number[], horizon = Infinity) => ({
  times: Float64Array.from(times, (t) => Math.min(t, horizon)),
  censored: Float64Array.from(times, (t) => (t >= horizon ? 1 : 0)),
});
const ramp = Array.from({ length: 100 }, (_, i) => i + 1);

describe('resampledTimesReached', () => {
  it('equals the Kaplan–Meier answer for the resample spelled out', () => {
    const runs = cell(ramp, 12);
    const values = resampledTimesReached([runs], 0.9, 50, chance())[0]!;
    const again = chance();
    let hidden = 0;
    values.forEach((value) => {
      const picks = ramp.map(() => Math.floor(again() * 100));
      const table = kaplanMeier(
        picks.map((i) => runs.times[i]!),
        picks.map((i) => runs.censored[i]!),
      );
      expect(value).toBe(timeReachedBy(0.9, table.time, table.survival) ?? Infinity);
      hidden += value === Infinity ? 1 : 0;
    });
    expect(hidden).toBeGreaterThan(0);
    expect(hidden).toBeLessThan(50);
  });

  it('meets the same resamples in every cell', () => {
    const [plain, doubled] = resampledTimesReached(
      [cell(ramp), cell(ramp.map((t) => 2 * t))],
      0.9,
      50,
      chance(),
    );
    expect([...doubled!]).toEqual([...plain!].map((t) => 2 * t));
  });

  it('repeats from the same stream', () => {
    expect(resampledTimesReached([cell(ramp)], 0.9, 20, chance())).toEqual(
      resampledTimesReached([cell(ramp)], 0.9, 20, chance()),
    );
  });
});

describe('resampledDifference', () => {
  const side = (point: number | null, resampled: number[]) => ({
    point,
    resampled: Float64Array.from(resampled),
  });
  const known = Array.from({ length: 39 }, (_, b) => b + 1); // 39 + 1 resamples: the 2.5 % point is the first of them

  it('takes the 2.5 % and 97.5 % order statistics of the paired differences', () => {
    const difference = resampledDifference(
      side(
        60,
        known.map((b) => 100 + 3 * b),
      ),
      side(
        20,
        known.map((b) => b),
      ),
      1000,
    );
    expect(difference).toEqual({ value: 40, low: 102, high: 178 });
  });

  it('bounds the difference on one side when the horizon hides the first', () => {
    const difference = resampledDifference(
      side(
        null,
        known.map(() => Infinity),
      ),
      side(20, known),
      1000,
    );
    expect(difference).toEqual({ value: null, low: 1000 - 39, high: null });
  });

  it('bounds it on the other when the horizon hides the second', () => {
    const difference = resampledDifference(
      side(20, known),
      side(
        null,
        known.map(() => Infinity),
      ),
      1000,
    );
    expect(difference).toEqual({ value: null, low: null, high: 39 - 1000 });
  });

  it('tells nothing when the horizon hides both', () => {
    const hidden = side(
      null,
      known.map(() => Infinity),
    );
    expect(resampledDifference(hidden, hidden, 1000)).toEqual({ value: null, low: null, high: null });
  });
});

describe('resampleCount', () => {
  it('is 999 up to 2,000 draws and 399 above', () => {
    expect([1, 1999, 2000, 2001, 10_000].map(resampleCount)).toEqual([999, 999, 999, 399, 399]);
  });

  it.each([1, 200, 2000, 2001, 10_000])(
    'makes the 2.5 % point a whole order statistic (%i draws)',
    (draws) => {
      expect(((resampleCount(draws) + 1) * 0.025) % 1).toBe(0);
    },
  );
});
