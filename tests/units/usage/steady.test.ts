import { describe, expect, it } from 'vitest';
import { circuitOf, drawOf, wattHours } from './household-under-test.ts';

describe('a steady appliance', () => {
  it('draws its watts times its count every minute, to the watt-hour', () => {
    const draw = drawOf(
      [circuitOf('desk', { kind: 'steady', runningW: 20, count: 3, dayScatterFraction: 0 })],
      { days: 2 },
    );
    expect(new Set(draw.circuits[0]!.demandW)).toEqual(new Set([60]));
    expect(wattHours(draw)).toBe(60 * 48);
    expect(draw.circuits[0]!.startExtraW).toBeUndefined();
  });

  it('scatters from local day to local day and keeps its mean over many', () => {
    const draw = drawOf([circuitOf('desk', { kind: 'steady', runningW: 100, dayScatterFraction: 0.2 })], {
      days: 700,
    });
    const days = Array.from({ length: 700 }, (_, d) => draw.circuits[0]!.demandW[d * 1440 + 720]!);
    const mean = days.reduce((a, b) => a + b) / days.length;
    expect(Math.abs(mean - 100)).toBeLessThan((5 * 20) / Math.sqrt(700));
    expect(new Set(days).size).toBeGreaterThan(600); // watts are kept to a 64th: a few days meet
  });

  it('changes its watts at local midnight and nowhere else', () => {
    const draw = drawOf([circuitOf('desk', { kind: 'steady', runningW: 100 })], {
      days: 3,
      start: [2026, 11, 1, 90],
    });
    const changes: number[] = [];
    const { demandW } = draw.circuits[0]!;
    for (let m = 1; m < demandW.length; m++) if (demandW[m] !== demandW[m - 1]) changes.push(m);
    expect(changes).toEqual([1440 + 60 - 90, 2880 + 60 - 90, 4320 + 60 - 90].filter((m) => m < 4320));
  });
});
