/** The clock on the wall through an outage. Dates of change as in zone-offset.test.ts. */
import { describe, expect, it } from 'vitest';
import { createClock, fillClock } from '../../../packages/sim/src/clock/fill-clock.ts';
import type { OutageClock } from '../../../packages/sim/src/clock/outage-clock.ts';
import { epochMinuteOfLocal, zoneOffsetMinutes } from '../../../packages/sim/src/clock/zone-offset.ts';

function clockFrom(
  zone: string,
  [year, month, day, minuteOfDay]: readonly [number, number, number, number],
  minutes: number,
): OutageClock {
  const clock = createClock(zone, minutes);
  fillClock(clock, epochMinuteOfLocal(zone, year, month, day, minuteOfDay));
  return clock;
}

const hourAndMinute = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

describe('an outage’s clock', () => {
  it('runs from the start through midnight, counting local days', () => {
    const clock = clockFrom('America/Phoenix', [2026, 7, 15, 23 * 60 + 58], 4);
    expect(Array.from(clock.localMinuteOfDay, hourAndMinute)).toEqual(['23:58', '23:59', '00:00', '00:01']);
    expect(Array.from(clock.localDay)).toEqual([0, 0, 1, 1]);
    expect(clock.firstLocalDay).toBe(Date.UTC(2026, 6, 15) / 86_400_000);
  });

  it.each([
    ['America/New_York', [2026, 3, 8, 118], ['01:58', '01:59', '03:00', '03:01']],
    ['America/New_York', [2026, 11, 1, 118], ['01:58', '01:59', '01:00', '01:01']],
    ['Australia/Sydney', [2026, 10, 4, 118], ['01:58', '01:59', '03:00', '03:01']],
    ['Australia/Sydney', [2026, 4, 5, 178], ['02:58', '02:59', '02:00', '02:01']],
    ['Australia/Lord_Howe', [2026, 4, 5, 118], ['01:58', '01:59', '01:30', '01:31']],
  ] as const)('in %s jumps where the law says', (zone, start, wall) => {
    const clock = clockFrom(zone, start, 4);
    expect(Array.from(clock.localMinuteOfDay, hourAndMinute)).toEqual(wall);
  });

  it('has a day of 23 hours in spring and one of 25 in autumn', () => {
    const minutesOfDay = (start: readonly [number, number, number, number]) =>
      clockFrom('America/New_York', start, 3 * 1440).localDay.reduce((n, day) => n + (day === 0 ? 1 : 0), 0);
    expect(minutesOfDay([2026, 3, 8, 0])).toBe(23 * 60);
    expect(minutesOfDay([2026, 3, 9, 0])).toBe(24 * 60);
    expect(minutesOfDay([2026, 11, 1, 0])).toBe(25 * 60);
  });

  it('agrees with the zone’s offset in every hour of a year, through both changes', () => {
    for (const zone of ['America/New_York', 'Australia/Sydney', 'Asia/Kathmandu', 'Africa/Casablanca']) {
      const clock = clockFrom(zone, [2026, 1, 1, 17], 366 * 1440);
      for (let m = 0; m < clock.minutes; m += 60) {
        const at = clock.startEpochMinute + m;
        const civil = at + zoneOffsetMinutes(zone, at);
        expect(clock.localMinuteOfDay[m]).toBe(((civil % 1440) + 1440) % 1440);
        expect(clock.localDay[m]! + clock.firstLocalDay).toBe(Math.floor(civil / 1440));
      }
    }
  });

  it('can be filled again for another draw, without a trace of the last', () => {
    const reused = clockFrom('America/New_York', [2026, 11, 1, 0], 3000);
    fillClock(reused, epochMinuteOfLocal('America/New_York', 2026, 3, 7, 600));
    expect(reused).toStrictEqual(clockFrom('America/New_York', [2026, 3, 7, 600], 3000));
  });

  it('does not depend on the zone of the computer', () => {
    const zoneOfComputer = process.env['TZ'];
    const clocks = ['Pacific/Auckland', 'America/St_Johns'].map((zone) => {
      process.env['TZ'] = zone;
      return clockFrom('America/New_York', [2026, 3, 7, 600], 3000);
    });
    if (zoneOfComputer === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zoneOfComputer;
    expect(clocks[0]).toStrictEqual(clocks[1]);
  });
});
