import { describe, expect, it } from 'vitest';
import { minutesInWindows } from '../../../packages/sim/src/clock/clock-windows.ts';
import {
  circuitOf,
  CLOCK_CHANGES,
  clockOf,
  drawOf,
  wattHours,
  type Written,
} from './household-under-test.ts';

const lamps: Written = { kind: 'lights', runningW: 60, litFraction: 0.5, dayScatterFraction: 0 };

describe('lights', () => {
  it.each(CLOCK_CHANGES)('%s: lit exactly in dark waking minutes', (_, setting) => {
    for (const awake of ['06:30-22:30', '16:00-02:30', '00:00-24:00']) {
      const up = minutesInWindows([awake]);
      // Never exactly 3°: whether that is dark is the last bit's business.
      const sunDeg = (reading: number) => 60.01 * (1 - Math.abs(reading - 720) / 360);
      const { demandW } = drawOf([circuitOf('lamps', lamps)], { ...setting, awake, sunDeg }).circuits[0]!;
      const expected = Array.from(clockOf(setting).localMinuteOfDay, (reading) =>
        Math.fround(sunDeg(reading)) < 3 && up[reading] === 1 ? 30 : 0,
      );
      expect([...demandW]).toEqual(expected);
    }
  });

  it('follow their own darkness', () => {
    const setting = { days: 1, sunDeg: (reading: number) => (reading < 720 ? 10 : -4) };
    const at = (darkBelowElevationDeg: number) =>
      wattHours(drawOf([circuitOf('lamps', { ...lamps, darkBelowElevationDeg })], setting));
    expect(at(20)).toBe(30 * 16);
    expect(at(3)).toBe(30 * 10.5);
    expect(at(-6)).toBe(0);
  });

  it('never exceed all of them, and are spread by household and day below that', () => {
    const circuits = [circuitOf('lamps', { ...lamps, count: 2, litFraction: 0.9, dayScatterFraction: 0.5 })];
    const levels = new Set<number>();
    for (let index = 0; index < 30; index++) {
      const { demandW } = drawOf(circuits, { days: 4, index, householdScatterFraction: 0.3 }).circuits[0]!;
      for (const watts of demandW) levels.add(watts);
    }
    expect(Math.max(...levels)).toBe(120);
    expect(Math.min(...levels)).toBe(0);
    expect(levels.size).toBeGreaterThan(50);
  });

  it('keep their mean under scatter while they stay below all of them', () => {
    const circuits = [circuitOf('lamps', { ...lamps, litFraction: 0.3, dayScatterFraction: 0.2 })];
    const draws = 150;
    let total = 0;
    for (let index = 0; index < draws; index++)
      total += wattHours(drawOf(circuits, { days: 4, index, householdScatterFraction: 0.15 }));
    const plain = wattHours(drawOf([circuitOf('lamps', { ...lamps, litFraction: 0.3 })], { days: 4 }));
    expect(Math.abs(total / draws / plain - 1)).toBeLessThan(5 * Math.sqrt((0.15 * 0.15 + 0.04 / 4) / draws));
  });

  it('rise and fall together with the household', () => {
    const circuits = [circuitOf('hall', lamps), circuitOf('porch', { ...lamps, runningW: 120 })];
    const levels = Array.from({ length: 20 }, (_, index) => {
      const draw = drawOf(circuits, { days: 1, index, householdScatterFraction: 0.3 });
      const [hall, porch] = draw.circuits.map(({ demandW }) => Math.max(...demandW));
      expect(Math.abs(porch! - 2 * hall!)).toBeLessThan(2 / 64); // watts are kept to a 64th
      return hall!;
    });
    expect(new Set(levels).size).toBeGreaterThan(15);
  });

  it('change with the day at local midnight, lit or not', () => {
    const setting = { days: 2, start: [2026, 6, 1, 720] as const, awake: '00:00-24:00', sunDeg: () => -20 };
    const { demandW } = drawOf([circuitOf('lamps', { ...lamps, dayScatterFraction: 0.2 })], setting)
      .circuits[0]!;
    const changes = [...demandW].flatMap((watts, m) => (m > 0 && watts !== demandW[m - 1] ? [m] : []));
    expect(changes).toEqual([720, 2160]);
  });
});
