import { describe, expect, it } from 'vitest';
import {
  createLocalDays,
  findLocalDays,
  minuteOfReading,
} from '../../../packages/sim/src/usage/local-days.ts';
import { CLOCK_CHANGES, clockOf, type Setting } from './household-under-test.ts';

function daysOf(setting: Setting) {
  const clock = clockOf(setting);
  const days = createLocalDays(clock.minutes);
  findLocalDays(clock, days);
  return { clock, days };
}

describe('findLocalDays', () => {
  it.each(CLOCK_CHANGES)('%s: stretches hold every minute once, with its day and reading', (_, setting) => {
    const { clock, days } = daysOf(setting);
    let next = 0;
    for (let s = 0; s < days.stretchCount; s++) {
      expect(days.stretchAt[s]).toBe(next);
      for (; next < days.stretchAt[s + 1]!; next++) {
        const reading = days.stretchReading[s]! + next - days.stretchAt[s]!;
        expect([clock.localDay[next], clock.localMinuteOfDay[next]]).toEqual([days.stretchDay[s], reading]);
      }
    }
    expect(next).toBe(clock.minutes);
  });

  it('finds the jump of one hour forward on 8 March 2026 in New York, two hours into the day', () => {
    const { days } = daysOf({ start: [2026, 3, 8, 0], days: 2 });
    expect([days.changeAt[0], days.changeMinutes[0], days.midnightAt[1]]).toEqual([120, 60, 1380]);
  });

  it('finds the hour that comes twice on 1 November 2026 in New York', () => {
    const { days } = daysOf({ start: [2026, 11, 1, 0], days: 2 });
    expect([days.changeAt[0], days.changeMinutes[0], days.midnightAt[1]]).toEqual([120, -60, 1500]);
  });
});

describe('minuteOfReading', () => {
  it.each(CLOCK_CHANGES)('%s: finds the first minute with that reading', (_, setting) => {
    const { clock, days } = daysOf(setting);
    const seen = new Set<number>();
    for (let m = 0; m < clock.minutes; m++) {
      const key = clock.localDay[m]! * 1440 + clock.localMinuteOfDay[m]!;
      const startsInsideFold = setting.start?.[3] === 70;
      if (!seen.has(key) && !startsInsideFold) {
        expect(minuteOfReading(days, clock.localDay[m]!, clock.localMinuteOfDay[m]!)).toBe(m);
      }
      seen.add(key);
    }
    expect(seen.size).toBeGreaterThan(2000);
  });

  it('moves a reading that is jumped over to the moment of the jump', () => {
    const { days } = daysOf({ start: [2026, 3, 8, 0], days: 1 });
    expect(minuteOfReading(days, 0, 119.5)).toBe(119.5);
    expect(minuteOfReading(days, 0, 150)).toBe(120);
    expect(minuteOfReading(days, 0, 181)).toBe(121);
  });

  it('reckons the day before the outage from its midnight', () => {
    const { days } = daysOf({ start: [2026, 6, 1, 600], days: 1 });
    expect(minuteOfReading(days, -1, 1439)).toBe(-601);
    expect(minuteOfReading(days, 0, 30)).toBe(-570);
  });
});
