/** Daily clearness of months whose spread is given. MODEL.md, Weather, W1. */
import { describe, expect, it } from 'vitest';
import { clearestDay } from '../../../packages/sim/src/weather/clearness-law.ts';
import { createClearnessTable, dailyClearness } from '../../../packages/sim/src/weather/clearness-table.ts';

const twelve = (value: number) => new Array<number>(12).fill(value);
/** Darkest and clearest day there can be in mid-January. */
const ends = (mean: number, sd: number) => {
  const table = createClearnessTable(twelve(mean), twelve(sd));
  return [dailyClearness(table, 0, -9), dailyClearness(table, 0, 9)] as const;
};

describe('daily clearness with a given spread', () => {
  it('is never darker than 0.04, about the darkest day of a year at Penn State (SURFRAD: median near 0.05)', () => {
    for (const mean of [0.25, 0.35, 0.5]) expect(ends(mean, 0.2)[0]).toBeCloseTo(0.04, 12);
  });

  it('is never clearer than the clearest day of Hollands and Huget', () => {
    // 0.6313 + 0.267 · 0.5 − 11.9 · 0.25⁸ = 0.76462, worked by hand
    expect(clearestDay(0.5)).toBeCloseTo(0.76462, 5);
    expect(ends(0.5, 0.25)[1]).toBeCloseTo(0.76462, 4);
  });
});
