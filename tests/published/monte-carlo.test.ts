/**
 * The minute loop, and whole studies from scenario to curve, against processes whose survival is known exactly.
 *
 * Not here: the persistence of a first-order sequence (variance of means, effective sample size), which no household
 * can be built from alone; it is held to its formulas where the weather is tested.
 */
import { describe, expect, it } from 'vitest';
import { agrees, named } from './comparisons/comparison.ts';
import { monteCarloComparisons } from './comparisons/monte-carlo/index.ts';

describe.each(Object.entries(monteCarloComparisons))('%s', (_, comparisons) => {
  it.each(named(comparisons))('%s [%s]', (_claim, _source, { ours, band, unit }) => {
    const value = ours();
    expect(agrees(value, band), `${value} ${unit}, expected ${band.text}`).toBe(true);
  });
});

it('compares every figure it means to', () => {
  const counts = Object.values(monteCarloComparisons).map((comparisons) => comparisons.length);
  expect(counts).toEqual([3, 4, 8, 4, 2, 5]);
});
