import { describe, expect, it } from 'vitest';
import { minutesInWindows } from '../../../packages/sim/src/clock/clock-windows.ts';
import {
  circuitOf,
  CLOCK_CHANGES,
  clockOf,
  drawOf,
  startMinutes,
  wattHours,
  type Setting,
  type Written,
} from './household-under-test.ts';

const pump = (windows: readonly string[], more: Written = {}): Written => ({
  kind: 'scheduled',
  runningW: 600,
  startingW: 2000,
  windows,
  ...more,
});
const spring: Setting = { start: [2026, 3, 8, 0], minutes: 1380 };
const autumn: Setting = { start: [2026, 11, 1, 0], minutes: 1500 };

describe('a scheduled appliance', () => {
  it.each(CLOCK_CHANGES)('%s: runs exactly while the clock on the wall is in its windows', (_, setting) => {
    for (const windows of [
      ['01:15-02:45'],
      ['22:00-06:00'],
      ['00:00-24:00'],
      ['23:30-00:30', '02:00-03:00', '12:00-12:01'],
    ]) {
      const on = minutesInWindows(windows);
      const clock = clockOf(setting);
      const { demandW } = drawOf([circuitOf('pool', pump(windows))], setting).circuits[0]!;
      const expected = Array.from(clock.localMinuteOfDay, (reading) => on[reading]! * 600);
      expect([...demandW]).toEqual(expected);
    }
  });

  it.each(CLOCK_CHANGES)('%s: starts exactly where the minute before was off', (_, setting) => {
    const windows = ['01:15-02:45', '23:30-00:30'];
    const on = minutesInWindows(windows);
    const readings = [...clockOf(setting).localMinuteOfDay];
    const expected = readings.flatMap((reading, m) => {
      const before = m > 0 ? readings[m - 1]! : (reading + 1439) % 1440;
      return on[reading] === 1 && on[before] === 0 ? [m] : [];
    });
    expect(startMinutes(drawOf([circuitOf('pool', pump(windows))], setting))).toEqual(expected);
    expect(expected.length).toBeGreaterThan(3);
  });

  it.each([
    ['02:00-03:00, when clocks go forward over it: not at all', '02:00-03:00', spring, 0, 0],
    ['01:00-04:00, when clocks go forward inside: two hours', '01:00-04:00', spring, 1200, 1],
    ['02:30-05:00, when clocks go forward into it: from the jump', '02:30-05:00', spring, 1200, 1],
    ['01:00-02:00, when that hour comes twice: two hours', '01:00-02:00', autumn, 1200, 1],
    ['01:30-02:00, when it comes twice: twice half an hour', '01:30-02:00', autumn, 600, 2],
  ])('%s', (_, window, setting, energyWh, starts) => {
    const draw = drawOf([circuitOf('pool', pump([window]))], setting);
    expect(wattHours(draw)).toBe(energyWh);
    expect(startMinutes(draw).length).toBe(starts);
  });

  it('is under way without a start when the outage begins inside a window', () => {
    const draw = drawOf([circuitOf('pool', pump(['08:00-10:00']))], {
      start: [2026, 6, 1, 540],
      minutes: 120,
    });
    expect(startMinutes(draw)).toEqual([]);
    expect(wattHours(draw)).toBe(600);
  });

  it.each([
    ['08:00-10:00', 480],
    ['00:00-02:00', 0],
  ])('starts when the outage begins with its window, %s', (window, minute) => {
    const draw = drawOf([circuitOf('pool', pump([window]))], { start: [2026, 6, 1, minute], minutes: 120 });
    expect(startMinutes(draw)).toEqual([0]);
  });

  it('knows no habits: the same in every draw, household and day', () => {
    const circuits = [circuitOf('pool', pump(['08:00-10:00'], { dayScatterFraction: 0.5 }))];
    const draws = [0, 1].map(
      (index) => drawOf(circuits, { days: 3, index, householdScatterFraction: 0.5 }).circuits[0]!,
    );
    expect(draws[0]!.demandW).toEqual(draws[1]!.demandW);
    expect(new Set(draws[0]!.demandW)).toEqual(new Set([0, 600]));
  });

  it('starts all of several in the same seconds', () => {
    const draw = drawOf([circuitOf('pool', pump(['08:00-10:00'], { count: 2 }))], { days: 1 });
    expect(draw.circuits[0]!.startExtraW![480]).toBe(2 * 1400);
    expect(draw.circuits[0]!.demandW[480]).toBe(1200);
  });
});
