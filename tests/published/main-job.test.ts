/** How many days, against what has been published about it and what the trade takes for granted. */
import { describe, expect, it } from 'vitest';
import { agrees, named } from './comparisons/comparison.ts';
import { mainJobComparisons } from './comparisons/main-job/index.ts';

describe.each(Object.entries(mainJobComparisons))('%s', (_, comparisons) => {
  it.each(named(comparisons))('%s [%s]', (_claim, _source, { ours, band, unit }) => {
    const value = ours();
    expect(agrees(value, band), `${value} ${unit}, expected ${band.text}`).toBe(true);
  });
});

it('compares every figure it means to', () => {
  const counts = Object.values(mainJobComparisons).map((comparisons) => comparisons.length);
  expect(counts).toEqual([21, 6, 4, 9, 4, 5]);
});
