/** Offset of local civil time from UTC, from the platform's copy of the IANA tables. */

const formatters = new Map<string, Intl.DateTimeFormat>();

/** Throws RangeError for a zone the platform does not know. */
function formatterFor(timeZone: string): Intl.DateTimeFormat {
  let formatter = formatters.get(timeZone);
  if (formatter === undefined) {
    formatter = new Intl.DateTimeFormat('en-US', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    });
    formatters.set(timeZone, formatter);
  }
  return formatter;
}

/** True for a zone name that civil time can be told in. */
export function isKnownZone(timeZone: string): boolean {
  try {
    formatterFor(timeZone);
    return true;
  } catch {
    return false;
  }
}

/** A UTC day in one zone: the offset at its start, and the minute from which another holds, 1440 for none. */
interface DayOffsets {
  readonly before: number;
  readonly changeMinute: number;
  readonly after: number;
}

/** Days of each zone. A cache only: the same question has the same answer whatever was asked before. */
const days = new Map<string, Map<number, DayOffsets>>();

function dayOffsets(timeZone: string, utcDay: number): DayOffsets {
  let kept = days.get(timeZone);
  if (kept === undefined) days.set(timeZone, (kept = new Map<number, DayOffsets>()));
  let day = kept.get(utcDay);
  if (day === undefined) kept.set(utcDay, (day = readDay(timeZone, utcDay)));
  return day;
}

/** No zone changes its clocks and changes them back within a day, so its two midnights tell whether they change. */
function readDay(timeZone: string, utcDay: number): DayOffsets {
  const midnight = utcDay * 1440;
  const before = readOffset(timeZone, midnight);
  const after = readOffset(timeZone, midnight + 1440);
  if (before === after) return { before, changeMinute: 1440, after };
  const change = findChange((minute) => readOffset(timeZone, minute), midnight, midnight + 1440);
  return { before, changeMinute: change - midnight, after };
}

/** First minute in (low, high] whose offset is not that of `low`; the one at `high` is known not to be. */
export function findChange(offsetAt: (epochMinute: number) => number, low: number, high: number): number {
  const before = offsetAt(low);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetAt(middle) === before) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Minutes to add to UTC to get civil time in `timeZone` at `epochMinute` (west is negative). The platform is asked
 * about each day once.
 */
export function zoneOffsetMinutes(timeZone: string, epochMinute: number): number {
  const utcDay = Math.floor(epochMinute / 1440);
  const { before, changeMinute, after } = dayOffsets(timeZone, utcDay);
  return epochMinute - utcDay * 1440 < changeMinute ? before : after;
}

function readOffset(timeZone: string, epochMinute: number): number {
  const part: Record<string, number> = {};
  for (const { type, value } of formatterFor(timeZone).formatToParts(epochMinute * 60_000))
    part[type] = Number(value);
  const civil =
    Date.UTC(part['year']!, part['month']! - 1, part['day'], part['hour'], part['minute']) / 60_000;
  return civil - Math.floor(epochMinute);
}

/**
 * UTC minute of a local civil date and time. Where clocks jump over it, as long after the jump as it lies after the
 * jump's beginning (02:30 of an hour that is left out is 03:30, as in RFC 5545, 3.3.5); where it comes twice, the first.
 */
export function epochMinuteOfLocal(
  timeZone: string,
  year: number,
  month: number,
  day: number,
  minuteOfDay: number,
): number {
  const asUtc = Date.UTC(year, month - 1, day) / 60_000 + minuteOfDay;
  const byOffsetBefore = asUtc - zoneOffsetMinutes(timeZone, asUtc - 1440);
  const offset = zoneOffsetMinutes(timeZone, byOffsetBefore);
  const byOffsetAfter = asUtc - offset;
  return zoneOffsetMinutes(timeZone, byOffsetAfter) === offset ? byOffsetAfter : byOffsetBefore;
}
