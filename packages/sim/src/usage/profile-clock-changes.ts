/** Records by the clock of a place that changes its clocks: made days of 24 hours by that clock. MODEL.md §Usage, U8. */
import { zoneOffsetMinutes } from '../clock/zone-offset.ts';

/** Readings of a file in its order; minutes on the local clock since 1970-01-01. */
export interface DatedReadings {
  readonly lines: readonly number[];
  readonly minutes: readonly number[];
  readonly watts: readonly number[];
}

export interface EvenReadings extends DatedReadings {
  /** What was done where the clocks changed, in plain sentences. */
  readonly notes: readonly string[];
}

/** Clocks change in the small hours: three before midnight are the evening before on any clock. */
const EVENING_MINUTES = 180;

/**
 * An hour that the clocks leave out repeats the reading before it; of an hour that comes twice the mean is taken. Other
 * gaps and repetitions stay as they are, for others to find.
 *
 * @param intervalMinutes of the readings; changes that are no whole number of them are left as they are
 * @param slackMinutes by which times may be off
 */
export function evenedClocks(
  readings: DatedReadings,
  intervalMinutes: number,
  timeZone: string,
  slackMinutes: number,
): EvenReadings {
  const lines: number[] = [];
  const minutes: number[] = [];
  const watts: number[] = [];
  const notes: string[] = [];
  const isNear = (a: number, b: number) => Math.abs(a - b) <= slackMinutes;
  let again = 0; // readings still to come of an hour that comes twice,
  let at = 0; // and where the first of them stands
  for (let k = 0; k < readings.minutes.length; k++) {
    const line = readings.lines[k]!;
    const minute = readings.minutes[k]!;
    const before = minutes.at(-1) ?? minute;
    const isUsual = again > 0 || isNear(minute - before, intervalMinutes); // mostly: no need to look the clocks up
    const shift = isUsual ? 0 : clockShiftMinutes(timeZone, Math.max(before, minute));
    const count = Math.round(Math.abs(shift) / intervalMinutes);
    const isChange =
      shift !== 0 &&
      isNear(count * intervalMinutes, Math.abs(shift)) &&
      isNear(minute - before, intervalMinutes + shift);
    if (isChange && shift > 0) {
      for (let i = 1; i <= count; i++) {
        lines.push(line);
        minutes.push(before + i * intervalMinutes);
        watts.push(watts.at(-1)!);
      }
      notes.push(
        `the clocks went forward on ${dateOf(minute)}: what they left out repeats the reading before it`,
      );
    } else if (isChange && minutes.length >= count) {
      again = count;
      at = minutes.length - count;
      notes.push(`the clocks went back on ${dateOf(before)}: of what comes twice the mean is taken`);
    }
    if (again > 0 && isNear(minutes[at]!, minute)) {
      watts[at] = (watts[at]! + readings.watts[k]!) / 2;
      at++;
      again--;
      continue;
    }
    again = 0;
    lines.push(line);
    minutes.push(minute);
    watts.push(readings.watts[k]!);
  }
  return { lines, minutes, watts, notes };
}

/** Minutes by which the clocks go forward on the day of that local minute; negative: back; 0: they do not. */
export function clockShiftMinutes(timeZone: string, localMinute: number): number {
  const midnight = Math.floor(localMinute / 1440) * 1440;
  const evening = midnight - zoneOffsetMinutes(timeZone, midnight) - EVENING_MINUTES;
  return zoneOffsetMinutes(timeZone, evening + 1440) - zoneOffsetMinutes(timeZone, evening);
}

function dateOf(localMinute: number): string {
  return new Date(localMinute * 60_000).toISOString().slice(0, 10);
}
