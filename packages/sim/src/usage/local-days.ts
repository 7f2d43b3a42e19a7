/** Where the local calendar days of an outage lie among its minutes. MODEL.md §Usage, U2. */
import type { OutageClock } from '../clock/outage-clock.ts';

/**
 * Days 0 … count-1 of an outage; day 0 is the one it starts on, seldom from midnight.
 *
 * A stretch is a run of minutes of one day over which the clock on the wall moves on evenly: one a day, two when the
 * clocks change. Stretch s covers minutes `stretchAt[s]` up to, not including, `stretchAt[s + 1]`.
 */
export interface LocalDays {
  count: number;
  /** Minute that local 00:00 of the day has, or would have had; before 0 on day 0. */
  readonly midnightAt: Int32Array;
  /** First minute after the clocks change within the day, and how far they jump forward; -1 and 0 on other days. */
  readonly changeAt: Int32Array;
  readonly changeMinutes: Int32Array;
  stretchCount: number;
  readonly stretchAt: Int32Array;
  readonly stretchDay: Int32Array;
  /** What the clock reads at the stretch's first minute, minutes after midnight. */
  readonly stretchReading: Int32Array;
}

/** Room for every local day that `minutes` minutes can touch. */
export function createLocalDays(minutes: number): LocalDays {
  const room = Math.ceil(minutes / 1440) + 3;
  const perDay = () => new Int32Array(room);
  const perStretch = () => new Int32Array(2 * room + 1);
  return {
    count: 0,
    midnightAt: perDay(),
    changeAt: perDay(),
    changeMinutes: perDay(),
    stretchCount: 0,
    stretchAt: perStretch(),
    stretchDay: perStretch(),
    stretchReading: perStretch(),
  };
}

/** Reads the days off the clock; the clocks change where the reading does not move on by one minute. */
export function findLocalDays(clock: OutageClock, days: LocalDays): void {
  const { localDay, localMinuteOfDay, minutes } = clock;
  days.count = 0;
  days.stretchCount = 0;
  for (let at = 0; at < minutes; at = stretchEnd(clock, at)) {
    const reading = localMinuteOfDay[at]!;
    if (at === 0 || localDay[at]! > localDay[at - 1]!) openDay(days, at, at === 0 ? reading : 0);
    const day = days.count - 1;
    const jump = reading - (at - days.midnightAt[day]!);
    if (jump !== 0) {
      days.changeAt[day] = at;
      days.changeMinutes[day] = jump;
    }
    const stretch = days.stretchCount++;
    days.stretchAt[stretch] = at;
    days.stretchDay[stretch] = day;
    days.stretchReading[stretch] = reading;
  }
  days.stretchAt[days.stretchCount] = minutes;
}

function openDay(days: LocalDays, at: number, expectedReading: number): void {
  const day = days.count++;
  days.midnightAt[day] = at - expectedReading;
  days.changeAt[day] = -1;
  days.changeMinutes[day] = 0;
}

/** First minute after `at` that does not follow on in the same local day, or the clock's end. */
function stretchEnd(clock: OutageClock, at: number): number {
  const { localMinuteOfDay, minutes } = clock;
  const reading = localMinuteOfDay[at]!;
  const dayEnd = Math.min(at + 1440 - reading, minutes);
  if (localMinuteOfDay[dayEnd - 1] === reading + dayEnd - 1 - at) return dayEnd;
  let end = at + 1;
  while (localMinuteOfDay[end] === reading + end - at) end++;
  return end;
}

/**
 * Outage minute (fractions allowed) at which the clock of day `day` shows `local` minutes after midnight. A reading
 * that the clocks jump over is the moment of the jump; one that comes twice is the first. Day -1 is the day before
 * the outage. May lie before 0 or past the horizon.
 */
export function minuteOfReading(days: LocalDays, day: number, local: number): number {
  if (day < 0) return days.midnightAt[0]! + 1440 * day + local;
  const plain = days.midnightAt[day]! + local;
  const changeAt = days.changeAt[day]!;
  if (changeAt < 0 || plain < changeAt) return plain;
  return Math.max(plain - days.changeMinutes[day]!, changeAt);
}
