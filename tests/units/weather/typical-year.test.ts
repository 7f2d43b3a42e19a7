/** What a typical year leaves out of its own statistics, put back by hand. MODEL.md, Weather, W2. */
import { describe, expect, it } from 'vitest';
import { correctTypicalYear } from '../../../packages/sim/src/weather/typical-year.ts';

const twelve = (value: number) => new Array<number>(12).fill(value);
const OBSERVED = {
  clearnessMean: twelve(0.5),
  clearnessSd: twelve(0.2),
  clearnessLag1: twelve(0.3),
  dryBulbMeanC: twelve(10),
  dryBulbDailyRangeC: twelve(9),
  dryBulbSdC: twelve(4),
  dryBulbLag1: twelve(0.6),
  clearnessDryBulbCorrelation: twelve(-0.2),
};

/** Variance of a month's mean over that of its days: [(1+ρ)/(1−ρ) − 2ρ/(30(1−ρ)²)]/30. */
const v = (rho: number) => ((1 + rho) / (1 - rho) - (2 * rho) / (30 * (1 - rho) * (1 - rho))) / 30;
/** What a month by itself makes of the persistence ρ. */
const withinMonth = (rho: number) => (rho - v(rho)) / (1 - v(rho));

describe('a typical year, corrected', () => {
  it('has the persistence that months by themselves would show as it was found, pooled by variance', () => {
    // half the months 0.2 with spread 0.2, half 0.4 with spread 0.1: (0.2 · 0.04 + 0.4 · 0.01) / 0.05
    const isOdd = (month: number) => month % 2 === 1;
    const { clearnessLag1 } = correctTypicalYear({
      ...OBSERVED,
      clearnessSd: twelve(0).map((_, month) => (isOdd(month) ? 0.1 : 0.2)),
      clearnessLag1: twelve(0).map((_, month) => (isOdd(month) ? 0.4 : 0.2)),
    });
    expect(new Set(clearnessLag1).size).toBe(1);
    expect(withinMonth(clearnessLag1[0]!)).toBeCloseTo(0.24, 9);
  });

  it('has 1.07 of the spread of clearness, and what differs from year to year besides', () => {
    const { clearnessSd, clearnessLag1 } = correctTypicalYear(OBSERVED);
    expect(withinMonth(clearnessLag1[0]!)).toBeCloseTo(0.3, 9);
    for (const sd of clearnessSd)
      expect(sd).toBeCloseTo((0.2 * 1.07) / Math.sqrt(1 - v(clearnessLag1[0]!)), 12);
  });

  it('has dry-bulb scatter more by what differs from year to year alone, where the season does not drift', () => {
    const { dryBulbSdC, dryBulbLag1 } = correctTypicalYear(OBSERVED);
    expect(withinMonth(dryBulbLag1[0]!)).toBeCloseTo(0.6, 9);
    for (const sd of dryBulbSdC) expect(sd).toBeCloseTo(4 / Math.sqrt(1 - v(dryBulbLag1[0]!)), 9);
  });

  it('has spreads and ties of a quarter, a half and a quarter of neighbouring months, December beside January', () => {
    const oneMonth = (value: number, other: number) => [value, ...new Array<number>(11).fill(other)];
    const made = correctTypicalYear({
      ...OBSERVED,
      clearnessSd: oneMonth(0.1, 0.2),
      clearnessDryBulbCorrelation: oneMonth(0.4, 0),
    });
    const { clearnessSd: sd, clearnessDryBulbCorrelation: tie } = made;
    expect([11, 0, 1, 2].map((month) => tie[month])).toEqual([0.1, 0.2, 0.1, 0]);
    expect(sd[0]! / sd[2]!).toBeCloseTo(0.75, 12);
    expect(sd[11]! / sd[2]!).toBeCloseTo(0.875, 12);
  });
});
