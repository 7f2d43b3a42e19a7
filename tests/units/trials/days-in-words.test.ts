import { describe, expect, it } from 'vitest';
import {
  atLeastThisLong,
  atMostThisLong,
  intervalCell,
  intervalText,
  limitCells,
  percent,
  reachCell,
  reachText,
} from '../../../packages/sim/src/trials/days-in-words.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const HOUR = 1 / 24;
const estimate = (low: number | null, high: number | null) => ({ value: low, low, high });

describe('how long it lasts, in words', () => {
  it.each([
    [2.46, '2.4 days'],
    [1, '1 day'],
    [14, '14 days'],
    [0.999, '23 hours'],
    [10 * 0.1 - 1e-12, '1 day'], // what tenths of days add up to may fall short by a last bit
    [7 / 1440 - 1e-15, '7 minutes'],
    [1.5 * HOUR, '1 hour'],
    [0.5 * HOUR, '30 minutes'],
    [1 / 1440, '1 minute'],
    [0, '0 minutes'],
  ])('atLeastThisLong(%f) is %s', (days, text) => expect(plain(atLeastThisLong(days))).toBe(text));

  it('rounds what is no more than so much up', () => {
    expect([2.41, 2.3, 0.99, 0.6 / 24].map((days) => plain(atMostThisLong(days)))).toEqual([
      '2.5 days',
      '2.3 days',
      '24 hours',
      '36 minutes',
    ]);
  });

  it('names the horizon when it hides the days', () => {
    expect(plain(reachText(null, 14))).toBe('14 days or more');
    expect(plain(reachText(0.5, 14))).toBe('12 hours');
  });
});

describe('how long it lasts, in a column', () => {
  it.each([
    [2.46, '2.4 d'],
    [2.3, '2.3 d'], // 2.3 × 10 falls short of 23 by a last bit
    [4, '4.0 d'],
    [0.99, '23 h'],
    [0.3, '7 h'],
    [0.04, '57 min'],
  ])('reachCell(%f) is %s: "at least" stays true', (days, text) =>
    expect(plain(reachCell(days, 14))).toBe(text),
  );

  it('names the horizon when it hides the days', () => {
    expect(plain(reachCell(null, 14))).toBe('≥ 14 d');
    expect(plain(reachCell(null, 10.5))).toBe('≥ 10.5 d');
    expect(plain(reachCell(null, 0.5))).toBe('≥ 12 h');
  });

  it('gives a whole hour for every whole hour, whatever its last bit', () => {
    for (let hour = 1; hour < 24; hour += 1) expect(plain(reachCell(hour / 24, 14))).toBe(`${hour} h`);
  });
});

describe('an interval', () => {
  it.each([
    [2.15, 2.61, '2.1 to 2.7 days'],
    [0.5, 0.76, '12 to 19 hours'],
    [0.5, 1.11, '12 hours to 1.2 days'],
    [1 * HOUR, 1.11, '1 hour to 1.2 days'],
    [0.5 * HOUR, 5 * HOUR, '30 minutes to 5 hours'],
    [0, 5 * HOUR, '0 to 5 hours'],
    [0.9 * HOUR, 1 * HOUR, '54 minutes to 1 hour'],
    [0.5, null, '12 hours to ≥ 14 days'],
    [12.57, null, '12.5 to ≥ 14 days'],
  ])('of %f to %f is %s: outwards, the unit once where both have it', (low, high, text) =>
    expect(plain(intervalText(estimate(low, high), 14))).toBe(`95 % interval ${text}`),
  );

  it.each([
    [2.15, 2.61, '2.1 to 2.7 d'],
    [0.5, 0.76, '12 to 19 h'],
    [0.5, 1.11, '12 h to 1.2 d'],
    [12.57, null, '12.5 to ≥ 14 d'],
  ])('of %f to %f is %s in a column', (low, high, text) => {
    expect(plain(intervalCell(estimate(low, high), 14))).toBe(text);
  });

  it('has limits for columns of their own, and is empty where the horizon hides both', () => {
    expect(limitCells(estimate(0.5, 1.11), 14)).toEqual({ low: '12\u00a0h', high: '1.2\u00a0d' });
    expect(intervalCell(estimate(null, null), 14)).toBe('');
    expect(plain(intervalText(estimate(null, null), 14))).toBe('95 % interval beyond the 14 days simulated');
  });
});

describe('percent', () => {
  it.each([
    [0, '0 %'],
    [0.001, '<1 %'],
    [0.005, '1 %'],
    [0.994, '99 %'],
    [0.995, '>99 %'], // would round to a certainty
    [0.9951, '>99 %'],
    [1, '100 %'],
    [null, ''],
  ])('%f is %s: only certainties are certain', (share, text) => expect(plain(percent(share))).toBe(text));
});
