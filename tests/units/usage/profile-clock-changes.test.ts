/** By how much the clocks of a day change. MODEL.md, Usage, U8. */
import { describe, expect, it } from 'vitest';
import { clockShiftMinutes } from '../../../packages/sim/src/usage/profile-clock-changes.ts';

const minuteOf = (localDate: string) => Date.parse(`${localDate}T12:00Z`) / 60_000;

describe('the clocks', () => {
  // dates of the IANA time zone database, from memory: Cuba changes at midnight, Lord Howe by half an hour
  it.each([
    ['America/New_York', '2026-03-08', 60],
    ['America/New_York', '2026-11-01', -60],
    ['America/Havana', '2026-03-08', 60],
    ['America/Havana', '2026-11-01', -60],
    ['Australia/Lord_Howe', '2026-10-04', 30],
    ['Australia/Lord_Howe', '2026-04-05', -30],
    ['Asia/Kathmandu', '2026-03-08', 0],
  ])('of %s change on %s by %i minutes, and on no day beside it', (timeZone, date, minutes) => {
    const noon = minuteOf(date);
    expect([-1440, 0, 1440].map((later) => clockShiftMinutes(timeZone, noon + later))).toEqual([
      0,
      minutes,
      0,
    ]);
  });
});
