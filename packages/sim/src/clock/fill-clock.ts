import type { OutageClock } from './outage-clock.ts';
import { findChange, zoneOffsetMinutes } from './zone-offset.ts';

/** The widest stretch that is searched for one change of the clocks: two changes never lie closer. */
const SEARCH_MINUTES = 20 * 1440;

type Writable = { -readonly [K in keyof OutageClock]: OutageClock[K] };

/** An empty clock to be filled for draw after draw. */
export function createClock(timeZone: string, minutes: number): OutageClock {
  return {
    startEpochMinute: 0,
    minutes,
    timeZone,
    firstLocalDay: 0,
    localMinuteOfDay: new Uint16Array(minutes),
    localDay: new Uint16Array(minutes),
  };
}

/** Sets the clock to an outage that starts at `startEpochMinute`. */
export function fillClock(clock: OutageClock, startEpochMinute: number): void {
  (clock as Writable).startEpochMinute = startEpochMinute;
  const { timeZone, minutes } = clock;
  const offsetAt = (epochMinute: number) => zoneOffsetMinutes(timeZone, epochMinute);
  const end = startEpochMinute + minutes;
  let at = startEpochMinute;
  let offset = offsetAt(at);
  const firstDay = Math.floor((at + offset) / 1440);
  (clock as Writable).firstLocalDay = firstDay;
  while (at < end) {
    const searched = Math.min(at + SEARCH_MINUTES, end);
    const offsetThen = offsetAt(searched);
    const until = offsetThen === offset ? searched : findChange(offsetAt, at, searched);
    fillStretch(clock, at - startEpochMinute, until - startEpochMinute, at + offset - firstDay * 1440);
    at = until;
    if (offsetThen !== offset) offset = offsetAt(until);
  }
}

/** 0, 1, … 1439: a day on the clock, copied day by day. */
const READINGS = Uint16Array.from({ length: 1440 }, (_, minute) => minute);

/** Fills minutes [from, to) whose civil time runs evenly on from `civil`, minutes after the first day's midnight. */
function fillStretch(clock: OutageClock, from: number, to: number, civil: number): void {
  let day = Math.floor(civil / 1440);
  let reading = civil - day * 1440;
  for (let m = from; m < to;) {
    const end = Math.min(to, m + 1440 - reading);
    clock.localMinuteOfDay.set(READINGS.subarray(reading, reading + end - m), m);
    clock.localDay.fill(day, m, end);
    m = end;
    reading = 0;
    day++;
  }
}
