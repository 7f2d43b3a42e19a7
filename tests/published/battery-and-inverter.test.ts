/** Banks and inverters against arithmetic on paper and published models; every check names its source. */
import { describe, expect, it } from 'vitest';
import { batteryComparisons } from './comparisons/battery/index.ts';
import { agrees, named } from './comparisons/comparison.ts';

describe.each(Object.entries(batteryComparisons))('%s', (_, comparisons) => {
  it.each(named(comparisons))('%s [%s]', (_claim, _source, { ours, band, unit }) => {
    const value = ours();
    expect(agrees(value, band), `${value} ${unit}, expected ${band.text}`).toBe(true);
  });
});

it('compares every figure it means to', () => {
  const counts = Object.values(batteryComparisons).map((comparisons) => comparisons.length);
  expect(counts).toEqual([10, 3, 5, 4, 18, 7, 2, 3]);
});
