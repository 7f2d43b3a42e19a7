/**
 * Civil time from the IANA tables. Offsets and dates of change: tzdata, files northamerica, australasia, asia, europe
 * (United States: second Sunday of March to first of November; New South Wales: first Sunday of October to first of
 * April; Nepal +05:45 since 1986; Lord Howe +10:30 with half an hour of summer time).
 */
import { describe, expect, it } from 'vitest';
import {
  epochMinuteOfLocal,
  isKnownZone,
  zoneOffsetMinutes,
} from '../../../packages/sim/src/clock/zone-offset.ts';

const utc = (text: string) => Date.parse(`${text}Z`) / 60_000;
const local = (zone: string, text: string) => {
  const [year, month, day, hour, minute] = text.split(/[-T:]/).map(Number);
  return epochMinuteOfLocal(zone, year!, month!, day!, hour! * 60 + minute!);
};

describe('the offset of civil time', () => {
  it.each([
    ['America/New_York', '2026-01-15T12:00', -300],
    ['America/New_York', '2026-07-15T12:00', -240],
    ['America/Phoenix', '2026-07-15T12:00', -420],
    ['Australia/Sydney', '2026-01-15T12:00', 660],
    ['Australia/Sydney', '2026-07-15T12:00', 600],
    ['Asia/Kathmandu', '2026-07-15T12:00', 345],
    ['Australia/Lord_Howe', '2026-01-15T12:00', 660],
    ['Australia/Lord_Howe', '2026-07-15T12:00', 630],
    ['Pacific/Kiritimati', '2026-07-15T12:00', 840],
    ['Pacific/Pago_Pago', '2026-07-15T12:00', -660],
    ['UTC', '2026-07-15T12:00', 0],
  ])('in %s at %sZ is %i minutes', (zone, at, minutes) => {
    expect(zoneOffsetMinutes(zone, utc(at))).toBe(minutes);
  });

  it.each([
    ['America/New_York', '2026-03-08T07:00', -300, -240],
    ['America/New_York', '2026-11-01T06:00', -240, -300],
    ['Australia/Sydney', '2026-04-04T16:00', 660, 600],
    ['Australia/Sydney', '2026-10-03T16:00', 600, 660],
    ['Australia/Lord_Howe', '2026-04-04T15:00', 660, 630],
  ])('in %s changes in the very minute %sZ', (zone, at, before, after) => {
    expect(zoneOffsetMinutes(zone, utc(at) - 1)).toBe(before);
    expect(zoneOffsetMinutes(zone, utc(at))).toBe(after);
  });

  it('is known for IANA names only', () => {
    expect(['America/New_York', 'UTC', 'Etc/GMT+5'].map(isKnownZone)).toEqual([true, true, true]);
    expect(['America/Boston', 'Eastern time', ''].map(isKnownZone)).toEqual([false, false, false]);
    expect(() => zoneOffsetMinutes('America/Boston', 0)).toThrow(RangeError);
  });
});

describe('the moment of a local date and time', () => {
  it.each([
    ['America/New_York', '2026-01-15T18:00', '2026-01-15T23:00'],
    ['Australia/Sydney', '2026-01-15T18:00', '2026-01-15T07:00'],
    ['Pacific/Kiritimati', '2026-01-01T00:30', '2025-12-31T10:30'],
    ['Asia/Kathmandu', '2024-02-29T00:00', '2024-02-28T18:15'],
  ])('in %s at %s is %sZ', (zone, text, at) => {
    expect(local(zone, text)).toBe(utc(at));
  });

  it.each([
    ['America/New_York', '2026-03-08T02:00', '2026-03-08T07:00'],
    ['America/New_York', '2026-03-08T02:30', '2026-03-08T07:30'],
    ['Australia/Sydney', '2026-10-04T02:59', '2026-10-03T16:59'],
    ['Australia/Lord_Howe', '2026-10-04T02:10', '2026-10-03T15:40'],
  ])('in %s that the clocks jump over, %s, lies as long after the jump: %sZ', (zone, text, at) => {
    expect(local(zone, text)).toBe(utc(at));
  });

  it.each([
    ['America/New_York', '2026-11-01T01:30', '2026-11-01T05:30'],
    ['Australia/Sydney', '2026-04-05T02:30', '2026-04-04T15:30'],
  ])('in %s that comes twice, %s, is the first: %sZ', (zone, text, at) => {
    expect(local(zone, text)).toBe(utc(at));
  });

  it('read back with the offset is that date and time again, in every hour of a year but those jumped over', () => {
    let compared = 0;
    for (const zone of ['America/New_York', 'Australia/Sydney', 'Asia/Kathmandu', 'Pacific/Kiritimati']) {
      for (let day = 0; day < 365; day += 1) {
        for (const minuteOfDay of [0, 90, 150, 725, 1439]) {
          const at = epochMinuteOfLocal(zone, 2026, 1, day + 1, minuteOfDay);
          const civil = at + zoneOffsetMinutes(zone, at);
          if (civil !== Date.UTC(2026, 0, day + 1) / 60_000 + minuteOfDay)
            expect([150, 90]).toContain(minuteOfDay);
          else compared++;
        }
      }
    }
    expect(compared).toBe(4 * 365 * 5 - 2); // 02:30 once in each of the two zones with summer time
  });
});
