/** Times of an outage as its household reads them. Minutes count from the outage's start. */
import type { DrawTrace } from '@rideout/sim';
import { timeOfDay, type Look } from './look.ts';

/** The clock of a trace. */
export type TraceClock = Pick<DrawTrace, 'firstLocalDay' | 'localDay' | 'localMinuteOfDay' | 'minutes'>;

const DAY_MS = 86_400_000;
const format = (options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', ...options });
const SHORT = format({ weekday: 'short', day: 'numeric', month: 'short' });
const LONG = format({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
const WEEKDAY = format({ weekday: 'short' });
const DAY_AND_MONTH = format({ day: 'numeric', month: 'short' });

/** "07:05" or "7:05 am"; the moment just after the last minute has the last minute's hour. */
export function clockText(clock: TraceClock, minute: number, style: Look['clock']): string {
  return timeOfDay(clock.localMinuteOfDay[within(clock, minute)]!, style);
}

/** "Tue, 14 Oct". */
export function dateText(clock: TraceClock, minute: number): string {
  return SHORT.format(dateAt(clock, minute));
}

/** "Tuesday 14 October 2026". */
export function longDateText(clock: TraceClock, minute: number): string {
  return LONG.format(dateAt(clock, minute)).replace(',', '');
}

/** "Tue" over "14 Oct". */
export function dateInTwoLines(clock: TraceClock, minute: number): string {
  const date = dateAt(clock, minute);
  return `${WEEKDAY.format(date)}\n${DAY_AND_MONTH.format(date)}`;
}

/** "Tue, 14 Oct, 07:05". */
export function momentText(clock: TraceClock, minute: number, style: Look['clock']): string {
  return `${dateText(clock, minute)}, ${clockText(clock, minute, style)}`;
}

/** "Tue 20 Oct, 16:42 to 18:00", "Tue 20 Oct, 00:00 to Wed 21 Oct, 24:00": minutes [from, to). */
export function stretchText(clock: TraceClock, from: number, to: number, style: Look['clock']): string {
  const [first, last] = [dateText(clock, from), dateText(clock, to - 1)];
  return `${momentText(clock, from, style)} to ${first === last ? '' : `${last}, `}${endText(clock, to - 1, style)}`;
}

/** When a last minute is over; midnight still belongs to the day that it ends. */
function endText(clock: TraceClock, lastMinute: number, style: Look['clock']): string {
  const end = clock.localMinuteOfDay[within(clock, lastMinute)]! + 1;
  return end === 1440 && style === 12 ? 'midnight' : timeOfDay(end, style);
}

/** First minute of each local day, and one past the last: day i is [starts[i], starts[i + 1]). */
export function localDayStarts({ localDay, minutes }: TraceClock): number[] {
  const starts = [0];
  for (let m = 1; m < minutes; m++) if (localDay[m] !== localDay[m - 1]) starts.push(m);
  return [...starts, minutes];
}

function dateAt(clock: TraceClock, minute: number): Date {
  return new Date((clock.firstLocalDay + clock.localDay[within(clock, minute)]!) * DAY_MS);
}

function within({ minutes }: TraceClock, minute: number): number {
  return Math.min(Math.max(Math.floor(minute), 0), minutes - 1);
}
