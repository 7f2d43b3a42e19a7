/** Dry-bulb through the day and what it takes from the day's sky. MODEL.md, Weather, W5. */
import { describe, expect, it } from 'vitest';
import {
  dailyRangeC,
  dayMeanWeights,
  fillDiurnalDryBulb,
} from '../../../packages/sim/src/weather/diurnal-dry-bulb.ts';

/** Hour-start values of two days and the hour that ends them. */
function hoursOf(meansC: readonly number[], rangesC: readonly number[]): Float64Array {
  const hours = new Float64Array(49);
  fillDiurnalDryBulb(meansC, rangesC, 2, hours);
  return hours;
}

describe('dry-bulb through a day', () => {
  const hours = hoursOf([10, 10, 10], [8, 8, 8]);

  it('passes its mean halfway between 05:30 and 14:30, and halfway from there to the next 05:30', () => {
    expect(hours[10]).toBeCloseTo(10, 12);
    expect(hours[22]).toBeCloseTo(10, 12);
  });

  it('is half an hour from its lowest at 5 and 6 and from its highest at 14 and 15, on a half cosine each', () => {
    // half cosines of 9 h by day and of 15 h by night: 4 °C either side of 10 °C times cos(180° · 0.5 h / length)
    const byDay = 4 * Math.cos(Math.PI / 18);
    const byNight = 4 * Math.cos(Math.PI / 30);
    expect(hours[29]).toBeCloseTo(10 - byNight, 12);
    expect(hours[30]).toBeCloseTo(10 - byDay, 12);
    expect(hours[14]).toBeCloseTo(10 + byDay, 12);
    expect(hours[15]).toBeCloseTo(10 + byNight, 12);
  });

  it('falls at night from its own day’s highest to the next day’s lowest', () => {
    const unlike = hoursOf([10, 20, 5], [8, 4, 6]);
    expect(unlike[22]).toBeCloseTo((10 + 4 + 20 - 2) / 2, 12);
    expect(unlike[34]).toBeCloseTo(20, 12);
    expect(unlike[46]).toBeCloseTo((20 + 2 + 5 - 3) / 2, 12);
  });

  it('has a mean of 24 hours that is worth as much as the levels that make it', () => {
    const weights = dayMeanWeights();
    expect(weights.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    const meansC = [0, 12, 0, 0];
    const threeDays = new Float64Array(73);
    fillDiurnalDryBulb(meansC, [0, 0, 0, 0], 3, threeDays);
    for (const day of [0, 1, 2]) {
      const hoursOfDay = threeDays.subarray(24 * day + 1, 24 * day + 25);
      expect(hoursOfDay.reduce((a, b) => a + b) / 24).toBeCloseTo(12 * weights[2 - day]!, 12);
    }
  });
});

describe('the range of a day', () => {
  it('is the month’s, times (0.33 + 1.15 K) over the same of the month’s own clearness', () => {
    // MODEL.md W5 on paper, month's clearness 0.5: 0.33/0.905, 0.56/0.905, 1, 1.135/0.905
    expect(dailyRangeC(10, 0, 0.5)).toBeCloseTo(3.6464, 4);
    expect(dailyRangeC(10, 0.2, 0.5)).toBeCloseTo(6.1878, 4);
    expect(dailyRangeC(10, 0.5, 0.5)).toBe(10);
    expect(dailyRangeC(10, 0.7, 0.5)).toBeCloseTo(12.5414, 4);
  });
});
