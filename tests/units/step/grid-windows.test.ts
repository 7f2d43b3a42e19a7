import { describe, expect, it } from 'vitest';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import type { GridSpec } from '../../../packages/sim/src/scenario/schema-sources.ts';
import { drawGridWindows } from '../../../packages/sim/src/step/grid-windows.ts';

const spec: GridSpec = {
  onHours: 4,
  offHours: 8,
  onScatterFraction: 0,
  offScatterFraction: 0,
};

function draw(changes: Partial<GridSpec>, minutes = 4320, index = 0): number[] {
  const switches: number[] = [];
  drawGridWindows({ ...spec, ...changes }, minutes, streamsOf('grid', index)('grid/windows'), switches);
  return switches;
}

describe('rolling outages', () => {
  it('without scatter are a timetable: eight hours off, four on', () => {
    expect(draw({}, 2000)).toEqual([480, 720, 1200, 1440, 1920]);
  });

  it('may begin with a longer outage', () => {
    expect(draw({ firstOffHours: 20 }, 2000)).toEqual([1200, 1440, 1920]);
  });

  it('scatter each stretch about its mean: over many draws the means come out', () => {
    const on: number[] = [];
    const off: number[] = [];
    for (let index = 0; index < 60; index++) {
      const switches = draw({ onScatterFraction: 0.3, offScatterFraction: 0.5 }, 60_000, index);
      switches.forEach((at, i) => (i % 2 === 0 ? off : on).push(at - (switches[i - 1] ?? 0)));
    }
    const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / values.length / 60;
    expect(on.length).toBeGreaterThan(4000);
    // standard errors 0.3 · 4 / √4800 = 0.017 h and 0.5 · 8 / √4800 = 0.058 h
    expect(Math.abs(mean(on) - 4)).toBeLessThan(4 * 0.018);
    expect(Math.abs(mean(off) - 8)).toBeLessThan(4 * 0.06);
    expect(Math.min(...on, ...off)).toBeGreaterThan(0);
  });

  it('scatter the first of them too, about the mean of its own', () => {
    const first = Array.from(
      { length: 2000 },
      (_, index) => draw({ firstOffHours: 20, offScatterFraction: 0.5 }, 20_000, index)[0]! / 60,
    );
    const mean = first.reduce((a, b) => a + b) / first.length;
    const spread = Math.sqrt(first.reduce((sum, h) => sum + (h - mean) * (h - mean), 0) / (first.length - 1));
    // four standard errors: 0.5 · 20 / √2000 h of the mean, 3 % of the spread (a log-normal law of such a scatter)
    expect(Math.abs(mean - 20)).toBeLessThan(4 * 0.224);
    expect(Math.abs(spread / 10 - 1)).toBeLessThan(4 * 0.03);
  });

  it('are the same over a longer horizon', () => {
    const scatter = { onScatterFraction: 0.4, offScatterFraction: 0.4 };
    const long = draw(scatter, 10_000);
    expect(long.slice(0, draw(scatter, 3000).length)).toEqual(draw(scatter, 3000));
    expect(long.every((at, i) => at > (long[i - 1] ?? 0))).toBe(true);
  });
});
