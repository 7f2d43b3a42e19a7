import { describe, expect, it } from 'vitest';
import { minutesInWindows } from '../../../packages/sim/src/clock/clock-windows.ts';

const inside = (...windows: string[]) =>
  Array.from(minutesInWindows(windows)).flatMap((inWindow, m) => (inWindow === 1 ? m : []));
const range = (from: number, to: number) => Array.from({ length: to - from }, (_, k) => from + k);

describe('minutesInWindows', () => {
  it('includes a window’s first minute and not its last', () => {
    expect(inside('07:00-07:03')).toEqual([420, 421, 422]);
  });

  it('goes on past midnight', () => {
    expect(inside('23:58-00:02')).toEqual([0, 1, 1438, 1439]);
  });

  it('takes 24:00 for the day’s end', () => {
    expect(inside('23:00-24:00')).toEqual(range(1380, 1440));
    expect(inside('00:00-24:00')).toEqual(range(0, 1440));
  });

  it('takes a window that ends where it starts for the whole day', () => {
    expect(inside('06:30-06:30')).toHaveLength(1440);
    expect(inside('00:00-00:00')).toHaveLength(1440);
  });

  it('joins windows, overlapping or not', () => {
    expect(inside('00:00-00:02', '00:01-00:04', '12:00-12:01')).toEqual([0, 1, 2, 3, 720]);
  });
});
