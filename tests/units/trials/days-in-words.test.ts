import { describe, expect, it } from 'vitest';
import {
  atLeastThisLong,
  daysDown,
  daysInterval,
  daysUp,
  percent,
  plainTenths,
  signedTenths,
} from '../../../packages/sim/src/trials/days-in-words.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('days in words', () => {
  it.each([
    [2.46, '2.4'],
    [2.3, '2.3'],
    [0.99, '0.9'],
    [0.04, '0.0'],
    [14, '14.0'],
  ])('daysDown(%f) is %s: "at least" stays true', (days, text) => expect(daysDown(days, 14)).toBe(text));
  it.each([
    [2.41, '2.5'],
    [2.3, '2.3'],
  ])('daysUp(%f) is %s', (days, text) => expect(daysUp(days, 14)).toBe(text));
  it('names the horizon when it hides the days', () => {
    expect(plain(daysDown(null, 14))).toBe('≥ 14');
    expect(plain(daysDown(null, 10.5))).toBe('≥ 10.5');
    expect(plain(daysInterval({ value: 13, low: 12.57, high: null }, 14))).toBe('12.5 to ≥ 14');
    expect(daysInterval({ value: null, low: null, high: null }, 14)).toBe('');
  });
  it.each([
    [2.46, '2.4 days'],
    [1, '1 day'],
    [14, '14 days'],
    [0.999, '23 hours'],
    [10 * 0.1 - 1e-12, '1 day'], // what tenths of days add up to may fall short by a last bit
    [7 / 1440 - 1e-15, '7 minutes'],
    [1.5 / 24, '1 hour'],
    [0.5 / 24, '30 minutes'],
    [0, '0 minutes'],
  ])('atLeastThisLong(%f) is %s', (days, text) => expect(plain(atLeastThisLong(days))).toBe(text));
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

describe('differences', () => {
  it('keep their sign in limits and lose it in words', () => {
    expect([signedTenths(-0.31), signedTenths(1.25), signedTenths(-0.04)]).toEqual(['−0.3', '1.3', '0.0']);
    expect(plainTenths(-1.7)).toBe('1.7');
  });
});
