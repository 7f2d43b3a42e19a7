import { describe, expect, it } from 'vitest';
import { nextLook, tightness } from '../../../packages/sim/src/trials/stopping-rule.ts';
import { summarise } from '../../../packages/sim/src/trials/summarise.ts';
import { fabricatedOutline, fabricatedRows } from './fabricated-study.ts';

const outline = fabricatedOutline();

describe('nextLook', () => {
  it.each([
    [0, 200],
    [1, 200],
    [199, 200],
    [200, 400],
    [401, 800],
    [1600, 3200],
  ])('after %i draws comes %i', (draws, next) => expect(nextLook(draws)).toBe(next));
});

describe('tightness', () => {
  const rows = fabricatedRows(outline, 0, 200);
  const { widest } = tightness(outline, rows, 1);

  it('names the alternative and strategy with the widest interval', () => {
    const widths = summarise(outline, rows).strategies.map((s) => ({
      alternativeId: s.alternativeId,
      strategyId: s.strategyId,
      halfWidthDays: (s.nineInTenDays.high! - s.nineInTenDays.low!) / 2,
    }));
    expect(widest).toEqual(widths.sort((a, b) => b.halfWidthDays - a.halfWidthDays)[0]);
  });

  it('is tight enough at that half-width and not below it', () => {
    expect(tightness(outline, rows, widest.halfWidthDays).tightEnough).toBe(true);
    expect(tightness(outline, rows, widest.halfWidthDays * 0.999).tightEnough).toBe(false);
  });

  it('narrows with more draws', () => {
    expect(tightness(outline, fabricatedRows(outline, 0, 1600), 1).widest.halfWidthDays).toBeLessThan(
      widest.halfWidthDays,
    );
  });

  it('counts an interval as far as the horizon where that hides its end', () => {
    const one = fabricatedOutline({
      alternatives: [{ id: 'as-is', title: '' }],
      strategies: [{ id: 'everything', title: '', carriedOutBy: 'person' }],
      horizonDays: 3,
    });
    const { low, high } = summarise(one, fabricatedRows(one, 0, 200)).strategies[0]!.nineInTenDays;
    const between = { ...one, horizonDays: (low! + high!) / 2 };
    expect(tightness(between, fabricatedRows(between, 0, 200), 1).widest.halfWidthDays).toBeCloseTo(
      (between.horizonDays - low!) / 2,
      12,
    );
  });

  it('has nothing left to learn where the horizon hides both limits', () => {
    const short = fabricatedOutline({ horizonDays: 0.25 });
    expect(tightness(short, fabricatedRows(short, 0, 200), 0.001)).toMatchObject({
      tightEnough: true,
      draws: 200,
    });
  });
});
