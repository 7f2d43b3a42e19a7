import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayOfYear,
  MONTH_STARTS,
  monthLength,
  monthOfDay,
} from '../../../packages/sim/src/weather/calendar.ts';
import { curveAt, meanKeepingNodes, monthPosition } from '../../../packages/sim/src/weather/month-curve.ts';

const epochDay = (text: string): number => Date.parse(text) / 86_400_000;

describe('dayOfYear', () => {
  it('counts days of the common year, with 29 February as the 28th', () => {
    expect(
      ['2026-01-01', '2026-03-01', '2028-02-29', '2028-03-01', '2028-12-31'].map((d) =>
        dayOfYear(epochDay(d)),
      ),
    ).toEqual([0, 59, 58, 59, 364]);
    expect([0, 30, 31, 58, 59, 364].map(monthOfDay)).toEqual([0, 0, 1, 1, 2, 11]);
  });
});

describe('meanKeepingNodes', () => {
  it('gives a curve whose average over each month is the month’s mean', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -30, max: 30, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (means) => {
          const nodes = meanKeepingNodes(means);
          means.forEach((mean, month) => {
            const days = Array.from({ length: monthLength(month) }, (_, day) => MONTH_STARTS[month]! + day);
            const average =
              days.reduce((sum, day) => sum + curveAt(nodes, monthPosition(day)), 0) / days.length;
            expect(Math.abs(average - mean)).toBeLessThan(1e-9);
          });
        },
      ),
    );
  });

  it('moves evenly through month ends and the turn of the year', () => {
    const nodes = meanKeepingNodes([-2, -1, 4, 10, 16, 20, 22, 21, 18, 11, 6, 1]);
    for (let day = 0; day < 365; day++) {
      const step = curveAt(nodes, monthPosition((day + 1) % 365)) - curveAt(nodes, monthPosition(day));
      expect(Math.abs(step)).toBeLessThan(0.35);
    }
  });
});
