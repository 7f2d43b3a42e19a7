import { describe, expect, it } from 'vitest';
import { createUsageDraw } from '../../../packages/sim/src/usage/usage-buffers.ts';
import type { CircuitWant } from '../../../packages/sim/src/usage/usage-draw.ts';
import { circuitOf, drawOf, planOf, type Written } from './household-under-test.ts';

const kinds: Readonly<Record<string, Written>> = {
  steady: { kind: 'steady', runningW: 12 },
  'duty-cycled': { kind: 'duty-cycled', runningW: 150, startingW: 900, onMinutes: 17, dutyFraction: 0.4 },
  events: { kind: 'events', runningW: 1500, startingW: 1700, usesPerDay: 5, minutesPerUse: 140 },
  scheduled: { kind: 'scheduled', runningW: 300, startingW: 800, windows: ['21:20-02:30', '06:00-07:00'] },
  lights: { kind: 'lights', runningW: 80, litFraction: 0.6 },
  measured: {
    kind: 'measured',
    profile: { intervalMinutes: 15, watts: Array.from({ length: 96 }, (_, k) => k % 7) },
  },
};
const circuits = [
  ...Object.entries(kinds).map(([name, written]) => circuitOf(name, written)),
  circuitOf('all', ...Object.values(kinds)),
];
/** Starts at 04:37 on the day before the clocks change, so that hours of the outage are not hours of the clock. */
const setting = { minutes: 5 * 1440 + 25, start: [2026, 3, 7, 277] as const };

/** Hours of the outage in which the circuit's watts change from one minute to the next, or something starts. */
function hoursOfChange({ demandW, startExtraW }: CircuitWant): number[] {
  const hours = new Set<number>();
  demandW.forEach((watts, m) => {
    const changes = m % 60 > 0 && watts !== demandW[m - 1];
    if (changes || (startExtraW?.[m] ?? 0) > 0) hours.add(Math.floor(m / 60));
  });
  return [...hours];
}

describe('busy hours', () => {
  it('hold every change of watts and every start, and leave the quiet hours of most kinds out', () => {
    const buffers = createUsageDraw(planOf(circuits, setting), setting.minutes);
    for (let index = 0; index < 20; index++) {
      drawOf(circuits, { ...setting, index }, buffers);
      buffers.circuits.forEach((circuit, c) => {
        const changed = hoursOfChange(circuit);
        expect(changed.filter((hour) => circuit.busyHours[hour] !== 1)).toEqual([]);
        if (c === 0) expect(circuit.busyHours.reduce((a, b) => a + b)).toBe(changed.length);
      });
      const busy = buffers.circuits.map(({ busyHours }) => busyHours.reduce((a, b) => a + b));
      expect(Math.max(busy[0]!, busy[3]!, busy[4]!)).toBeLessThan(40);
    }
  });

  it('leave hours of one number of watts; every hour has its sum, least and most, and its largest start', () => {
    const buffers = createUsageDraw(planOf(circuits, setting), setting.minutes);
    for (let index = 0; index < 20; index++) {
      drawOf(circuits, { ...setting, index }, buffers);
      for (const circuit of buffers.circuits)
        circuit.busyHours.forEach((busy, h) => {
          const inHour = (row: Float32Array | undefined) => [...(row?.subarray(60 * h, 60 * h + 60) ?? [])];
          const watts = inHour(circuit.demandW);
          if (busy === 0) expect(new Set(watts).size).toBe(1);
          expect(circuit.hourWmin[h]).toBe(watts.reduce((sum, w) => sum + w, 0));
          expect(circuit.leastW[h]).toBe(Math.min(...watts));
          expect(circuit.mostW[h]).toBe(Math.max(...watts));
          expect(circuit.hourExtraW?.[h] ?? 0).toBe(Math.max(0, ...inHour(circuit.startExtraW)));
        });
    }
  });

  it('list each minute with a start once', () => {
    const { circuits: wants } = drawOf(circuits, setting);
    for (const { startExtraW, starts } of wants) {
      const listed = [...starts.at.subarray(0, starts.count)].sort((a, b) => a - b);
      const there = [...(startExtraW ?? [])].flatMap((w, m) => (w > 0 ? [m] : []));
      expect(listed).toEqual(there);
    }
    expect(wants.at(-1)!.starts.count).toBeGreaterThan(50);
  });
});
