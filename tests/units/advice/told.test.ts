/** How sure a gain is, by its 95 % intervals. */
import { describe, expect, it } from 'vitest';
import { isGain, toldOf } from '../../../packages/sim/src/advice/told.ts';

const within = (low: number | null, high: number | null) => ({ value: low, low, high });
const open = within(null, null);
const none = within(-1, 1);

describe('a gain in days', () => {
  it.each([
    ['clear', within(0.1, 2), none],
    ['clear', within(0.1, null), open],
    ['clear', within(0.1, 2), within(-1, 0)],
    ['clear, less on average', within(0.1, 2), within(-2, -0.1)],
    ['on average', none, within(0.1, 2)],
    ['on average', within(0, 2), within(0.1, 2)],
    ['not told from zero', none, none],
    ['not told from zero', open, open],
    ['not told from zero', within(-1, 0), within(-1, 0)],
    ['a loss', within(-2, -0.1), none],
    ['a loss', within(-2, -0.1), within(0.1, 2)],
    ['a loss', none, within(-2, -0.1)],
  ] as const)('is %s', (told, days, meanDays) => {
    expect(toldOf({ days, meanDays })).toBe(told);
    expect(isGain(told)).toBe(['clear', 'clear, less on average', 'on average'].includes(told));
  });
});
