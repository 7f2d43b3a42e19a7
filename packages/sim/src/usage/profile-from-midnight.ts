import type { MeasuredProfile } from '../scenario/scenario.ts';
import { minuteMeans } from './measured.ts';

/**
 * Turns a record so that it begins at local midnight. Of a record of a day or more only whole days are kept, so that
 * repeating it keeps every reading at its time of day, and what was measured before the first midnight comes last;
 * its readings are laid to midnight to within one interval. An interval that does not divide a day is first turned
 * into minute means. A record shorter than a day is returned as it is: it is repeated end to end from midnight.
 *
 * @param startMinute local clock time of the first reading, minutes after any midnight, ≥ 0.
 */
export function profileFromMidnight(record: MeasuredProfile, startMinute: number): MeasuredProfile {
  if (record.watts.length * record.intervalMinutes < 1440 - 1e-6) return record;
  const { intervalMinutes, watts } = dividesDay(record.intervalMinutes)
    ? record
    : { intervalMinutes: 1, watts: Array.from(minuteMeans(record, 1)) };
  const perDay = Math.round(1440 / intervalMinutes);
  const kept = watts.slice(0, Math.floor(watts.length / perDay) * perDay);
  const untilMidnight = 1440 - (startMinute % 1440);
  const shift = Math.ceil(untilMidnight / intervalMinutes - 1e-6) % perDay;
  return { intervalMinutes, watts: [...kept.slice(shift), ...kept.slice(0, shift)] };
}

function dividesDay(intervalMinutes: number): boolean {
  const perDay = 1440 / intervalMinutes;
  return Math.abs(perDay - Math.round(perDay)) < 1e-6;
}
