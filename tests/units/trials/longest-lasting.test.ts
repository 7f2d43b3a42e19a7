import { describe, expect, it } from 'vitest';
import { longestLasting } from '../../../packages/sim/src/trials/longest-lasting.ts';
import type { StrategySummary } from '../../../packages/sim/src/trials/study-summary.ts';

const strategy = (strategyId: string, nineInTen: number | null, median: number | null, censoredDraws = 0) =>
  ({
    strategyId,
    nineInTenDays: { value: nineInTen, low: null, high: null },
    medianDays: { value: median, low: null, high: null },
    censoredDraws,
    draws: 100,
  }) as StrategySummary;
const chosen = (...strategies: StrategySummary[]) => longestLasting(strategies).strategyId;

describe('longestLasting', () => {
  it('goes by the days that nine in ten reach, not by the median', () =>
    expect(chosen(strategy('a', 2, 9), strategy('b', 3, 4))).toBe('b'));
  it('takes hidden by the horizon as longest', () =>
    expect(chosen(strategy('a', 13, null), strategy('b', null, null))).toBe('b'));
  it('then goes by the median', () => expect(chosen(strategy('a', 2, 4), strategy('b', 2, 5))).toBe('b'));
  it('takes a median hidden by the horizon as longest', () =>
    expect(chosen(strategy('a', 2, 13), strategy('b', 2, null))).toBe('b'));
  it('then by the share still running', () =>
    expect(chosen(strategy('a', null, null, 95), strategy('b', null, null, 99))).toBe('b'));
  it('whatever the number of draws', () =>
    expect(chosen({ ...strategy('a', null, null, 180), draws: 200 }, strategy('b', null, null, 95))).toBe(
      'b',
    ));
  it('then by the order of the list', () =>
    expect(chosen(strategy('a', 2, 5), strategy('b', 2, 5))).toBe('a'));
  it('refuses an empty list', () => expect(() => longestLasting([])).toThrow('no strategies to choose from'));
});
