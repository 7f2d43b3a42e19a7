import { describe, expect, it } from 'vitest';
import { minuteMeans } from '../../../packages/sim/src/usage/measured.ts';
import {
  circuitOf,
  CLOCK_CHANGES,
  clockOf,
  drawOf,
  scatterOf,
  wattHours,
  type Written,
} from './household-under-test.ts';

const ramp = (length: number) => Array.from({ length }, (_, k) => k);
const logger = (intervalMinutes: number, watts: readonly number[], more: Written = {}): Written => ({
  kind: 'measured',
  dayScatterFraction: 0,
  ...more,
  profile: { intervalMinutes, watts },
});

describe('a measured profile', () => {
  it.each(CLOCK_CHANGES)('%s: gives each minute the reading of its time of day', (_, setting) => {
    const { demandW } = drawOf([circuitOf('shed', logger(15, ramp(96)))], setting).circuits[0]!;
    expect([...demandW]).toEqual(
      Array.from(clockOf(setting).localMinuteOfDay, (reading) => Math.floor(reading / 15)),
    );
  });

  it('multiplies by scale and count', () => {
    expect(
      wattHours(drawOf([circuitOf('shed', logger(60, ramp(24), { scale: 2, count: 3 }))], { days: 1 })),
    ).toBe(6 * 276);
  });

  it('has a factor of its own for each day, mean 1', () => {
    const days = 400;
    const draw = drawOf([circuitOf('shed', logger(1440, [100], { dayScatterFraction: 0.3 }))], { days });
    const { mean, spread } = scatterOf(draw.circuits[0]!.demandW, days);
    expect(Math.abs(mean / (100 * 1440) - 1)).toBeLessThan(0.045); // three standard errors
    expect(Math.abs(spread - 0.3)).toBeLessThan(0.06);
  });

  it('of several days starts at any of them, and keeps their order', () => {
    const firstDays = new Set<number>();
    for (let index = 0; index < 60; index++) {
      const { demandW } = drawOf([circuitOf('shed', logger(1440, [10, 20, 30]))], {
        days: 3,
        index,
        start: [2026, 6, 1, 0],
      }).circuits[0]!;
      const days = [demandW[5]!, demandW[1445]!, demandW[2885]!];
      firstDays.add(days[0]!);
      expect(days).toEqual([0, 1, 2].map((d) => ((days[0]! / 10 - 1 + d) % 3) * 10 + 10));
    }
    expect([...firstDays].sort()).toEqual([10, 20, 30]);
  });

  it('shorter than a day is repeated end to end from midnight', () => {
    const { demandW } = drawOf([circuitOf('shed', logger(1, ramp(7)))], { start: [2026, 6, 1, 100], days: 2 })
      .circuits[0]!;
    expect([...demandW.slice(0, 8)]).toEqual(ramp(8).map((m) => (100 + m) % 7));
    expect(demandW[1340]).toBe(1440 % 7);
  });
});

describe('minuteMeans', () => {
  it('averages what is finer than a minute', () => {
    expect([...minuteMeans({ intervalMinutes: 0.25, watts: [0, 100, 200, 300, 8, 8, 8, 8] }, 1)]).toEqual([
      150, 8,
    ]);
  });
  it('repeats what is coarser', () => {
    expect([...minuteMeans({ intervalMinutes: 3, watts: [5, 7] }, 2)]).toEqual([10, 10, 10, 14, 14, 14]);
  });
  it('shares out what does not fit the minute, by time', () => {
    expect([...minuteMeans({ intervalMinutes: 1.5, watts: [10, 40] }, 1)]).toEqual([10, 25, 40]);
  });
  it('keeps the energy of any interval', () => {
    for (const intervalMinutes of [1 / 6, 0.5, 0.7, 1, 2.5, 7, 15]) {
      const watts = Array.from({ length: 420 }, (_, k) => (k * 37) % 101);
      const whole = Math.floor(420 * intervalMinutes + 1e-6) / intervalMinutes;
      const expected =
        watts.reduce((total, w, k) => total + w * Math.min(1, Math.max(0, whole - k)), 0) * intervalMinutes;
      const found = minuteMeans({ intervalMinutes, watts }, 1).reduce((a, b) => a + b, 0);
      expect(Math.abs(found / expected - 1)).toBeLessThan(1e-6);
    }
  });
  it('refuses a record that does not fill a minute', () => {
    expect(() => minuteMeans({ intervalMinutes: 0.1, watts: [1, 2] }, 1)).toThrow('must last a minute');
  });
});
