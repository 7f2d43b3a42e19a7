import { describe, expect, it } from 'vitest';
import {
  gainCells,
  gainInterval,
  gainLength,
  gainLimits,
  gainWithLimitsCell,
  signedGainLength,
} from '../../../packages/sim/src/trials/gains-in-words.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const gain = (value: number | null, low: number | null, high: number | null) => ({ value, low, high });

describe('a gain', () => {
  it.each([
    [2.96, '3 days'],
    [-1.7, '1.7 days'],
    [0.98, '1 day'],
    [0.127, '3 hours'],
    [0.02, '29 minutes'],
  ])('of %f is %s: to the nearest, without its sign', (days, text) =>
    expect(plain(gainLength(days))).toBe(text),
  );

  it('keeps its sign where nothing else says which way', () => {
    expect([0.127, -0.127, -1.7, -0.0001].map((days) => plain(signedGainLength(days)))).toEqual([
      '3 hours',
      '−3 hours',
      '−1.7 days',
      '0 minutes',
    ]);
  });
});

describe('the limits of a gain', () => {
  it.each([
    [gain(0.2, -0.1, 0.3), '−3 to 8 hours'],
    [gain(0.1, 0.06, 0.14), '1 to 4 hours'],
    [gain(0.1, 0.01, 0.14), '14 minutes to 4 hours'],
    [gain(3.2, 0.6, 8.25), '14 hours to 8.3 days'],
    [gain(-1.7, -2.01, -1.26), '−2.1 to −1.2 days'],
    [gain(null, 1.5, null), '1.5 days to beyond what was simulated'],
    [gain(null, null, -1.5), 'beyond what was simulated to −1.5 days'],
    [gain(null, null, null), ''],
  ])('of %o are %s: outwards, and never none where they leave none out', (of, text) =>
    expect(plain(gainLimits(of))).toBe(text),
  );

  it('are called an interval, or stand in columns', () => {
    expect(plain(gainInterval(gain(0.2, -0.1, 0.3)))).toBe('95 % interval −3 to 8 hours');
    expect(gainInterval(gain(null, null, null))).toBe('');
    expect(gainCells(gain(0.2, -0.1, null)).map(plain)).toEqual(['5 h', '−3 h', 'hidden']);
    expect(plain(gainWithLimitsCell(gain(0.127, 0.05, 0.28)))).toBe('3 h (1 to 7 h)');
    expect(plain(gainWithLimitsCell(gain(null, 2.12, null)))).toBe('hidden (2.1 d to hidden)');
  });
});
