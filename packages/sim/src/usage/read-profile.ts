import { isKnownZone } from '../clock/zone-offset.ts';
import type { MeasuredProfile } from '../scenario/scenario.ts';
import { MOST } from '../scenario/schema-terms.ts';
import { clockShiftMinutes, evenedClocks, type DatedReadings } from './profile-clock-changes.ts';
import { profileColumns, type ProfileColumns } from './profile-columns.ts';
import { ProfileFileError, type ProfileFinding } from './profile-file-error.ts';
import { profileFromMidnight } from './profile-from-midnight.ts';
import { looksLikeInstead, profileTime, type TimeStyle } from './profile-time.ts';

/**
 * Reads a measured profile from CSV text: a header with a time column and a watts column, then readings at a regular
 * interval of any length. Each reading holds from its time until the next. Times are dates with clock time
 * (2026-01-15T18:00), clock times (18:00, past midnight allowed) or minutes after midnight, on the local clock.
 * Columns are parted by comma, semicolon or tab; blank lines and lines that begin with # are passed over.
 * Whole days are kept when there are any, and the profile begins at midnight (see `profileFromMidnight`).
 *
 * @param fileName as told in messages.
 * @param options.timeZone of the house (IANA): dated records may then go across its changes of the clock (see
 *   `evenedClocks`); left out, an hour more or less between two readings is a fault.
 * @param options.onNote told, in plain sentences, what was done where the clocks changed.
 * @throws ProfileFileError with every fault by line.
 */
export function readProfile(
  text: string,
  fileName: string,
  options: { readonly timeZone?: string; readonly onNote?: (note: string) => void } = {},
): MeasuredProfile {
  const { timeZone, onNote } = options;
  const findings: ProfileFinding[] = [];
  const [header, ...rows] = linesOf(text);
  if (header === undefined) {
    throw new ProfileFileError(fileName, [
      { line: 1, text: 'the file is empty; a header with time and watts is expected' },
    ]);
  }
  const columns = profileColumns(header, findings);
  if (columns === undefined) throw new ProfileFileError(fileName, findings);
  const asWritten = readRows(rows, columns, findings);
  checkMinutes(asWritten, findings);
  if (rows.length < 2)
    findings.push({
      line: header.line,
      text: `at least two readings are expected below the header; found ${rows.length}`,
    });
  const interval = usualInterval(asWritten.minutes);
  const zone = timeZone !== undefined && isKnownZone(timeZone) ? timeZone : undefined;
  const byClock = zone !== undefined && asWritten.style === 'date';
  const readings = byClock
    ? evenedClocks(asWritten, interval, zone, SLACK_MINUTES)
    : { ...asWritten, notes: [] };
  checkIntervals(readings, asWritten.style, interval, zone, findings);
  if (findings.length === 0 && readings.watts.length * interval < 1) {
    findings.push({ line: header.line, text: 'the readings last less than a minute together' });
  }
  if (findings.length > 0)
    throw new ProfileFileError(
      fileName,
      findings.sort((a, b) => a.line - b.line),
    );
  for (const note of readings.notes) onNote?.(note);
  return profileFromMidnight({ intervalMinutes: interval, watts: readings.watts }, readings.minutes[0]!);
}

export interface NumberedLine {
  readonly line: number;
  readonly text: string;
}

function linesOf(text: string): NumberedLine[] {
  return text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((each, index) => ({ line: index + 1, text: each.trim() }))
    .filter((each) => each.text !== '' && !each.text.startsWith('#'));
}

interface Readings {
  style: TimeStyle | undefined;
  readonly lines: number[];
  readonly minutes: number[];
  readonly watts: number[];
}

function readRows(
  rows: readonly NumberedLine[],
  columns: ProfileColumns,
  findings: ProfileFinding[],
): Readings {
  const readings: Readings = { style: undefined, lines: [], minutes: [], watts: [] };
  for (const { line, text } of rows) {
    const cells = columns.cellsOf(text);
    if (cells.slice(columns.count).some((cell) => cell !== '')) {
      findings.push({ line, text: tooManyCells(cells.length, columns.count) });
      continue;
    }
    const timeText = cells[columns.time] ?? '';
    const time = profileTime(timeText);
    const watts = readWatts(cells[columns.watts] ?? '', line, findings);
    const style = (readings.style ??= time?.style);
    if (time === undefined || time.style !== style) {
      findings.push({ line, text: `the time is ${quoted(timeText)}; ${TIME_EXPECTED[style ?? 'any']}` });
      continue;
    }
    readings.lines.push(line);
    readings.minutes.push(
      style === 'clock' ? pastMidnight(time.minute, readings.minutes.at(-1)) : time.minute,
    );
    readings.watts.push(watts);
  }
  return readings;
}

/** A decimal comma between commas would lose what is behind it, and move every column after it. */
function tooManyCells(found: number, expected: number): string {
  return `found ${found} cells, where the header names ${expected}; with decimal commas part the columns by semicolons, or write decimals with a point`;
}

const TIME_EXPECTED = {
  any: 'expected a time such as 2026-01-15T18:00, 18:00 or minutes after midnight',
  date: 'expected a date and time such as 2026-01-15T18:00, as in the lines above',
  clock: 'expected a clock time such as 18:00, as in the lines above',
  minutes: 'expected minutes after midnight, as in the lines above',
};

function quoted(text: string): string {
  return text === '' ? 'missing' : `"${text}"`;
}

/** Clock times carry no day: one that is not later than the one before belongs to the next day. */
function pastMidnight(minute: number, before: number | undefined): number {
  if (before === undefined) return minute;
  const day = Math.floor(before / 1440);
  return day * 1440 + minute + (day * 1440 + minute < before ? 1440 : 0);
}

/** Numbers that cannot be minutes are told once, at the first of them: what they count, all of them count. */
function checkMinutes({ style, lines, minutes }: Readings, findings: ProfileFinding[]): void {
  if (style !== 'minutes') return;
  const k = minutes.findIndex((minute) => looksLikeInstead(minute, minutes[0]!) !== undefined);
  if (k < 0) return;
  findings.push({
    line: lines[k]!,
    text: `the time is "${minutes[k]!}", which looks like ${looksLikeInstead(minutes[k]!, minutes[0]!)}; ${TIME_EXPECTED.any}`,
  });
}

function readWatts(text: string, line: number, findings: ProfileFinding[]): number {
  const watts = text === '' ? NaN : Number(text);
  if (!Number.isFinite(watts))
    findings.push({ line, text: `the watts are ${quoted(text)}; ${wattsExpected(text)}` });
  else if (watts < 0)
    findings.push({
      line,
      text: `the watts are ${watts}; a load cannot be below 0 (power sent back is not a load)`,
    });
  else if (watts > MOST) findings.push({ line, text: `the watts are ${watts}; expected at most ${MOST}` });
  return watts;
}

/** A comma may part thousands or decimals: nobody but the one who wrote it can tell. */
function wattsExpected(text: string): string {
  return /^-?\d+(,\d+)+$/.test(text)
    ? 'expected a number without a comma, such as 1500 or 1.5'
    : 'expected a number';
}

/** The commonest step from one time to the next, minutes, to the tenth of a second; NaN without two times. */
function usualInterval(minutes: readonly number[]): number {
  const counts = new Map<number, number>();
  let usual = NaN;
  for (let k = 1; k < minutes.length; k++) {
    const step = Math.round((minutes[k]! - minutes[k - 1]!) * 600) / 600;
    const count = (counts.get(step) ?? 0) + 1;
    counts.set(step, count);
    if (step > 0 && count > (counts.get(usual) ?? 0)) usual = step;
  }
  return usual;
}

/** Half a second: times written to the whole second still count as regular. */
const SLACK_MINUTES = 0.5 / 60 + 1e-9;

const HOUR_MINUTES = 60;

/** What may be behind an hour more or less between two dated readings. */
function ifClocksChanged(timeZone: string | undefined, localMinute: number): string {
  if (timeZone === undefined)
    return '; if the clocks were changed there, write the whole file in standard time, without daylight saving';
  return clockShiftMinutes(timeZone, localMinute) === 0
    ? `; the clocks of ${timeZone} do not change that day`
    : `; the clocks of ${timeZone} change that day, but not so`;
}

function checkIntervals(
  { lines, minutes }: DatedReadings,
  style: TimeStyle | undefined,
  interval: number,
  timeZone: string | undefined,
  findings: ProfileFinding[],
): void {
  for (let k = 1; k < minutes.length; k++) {
    const step = minutes[k]! - minutes[k - 1]!;
    if (Math.abs(step - interval) <= SLACK_MINUTES) continue;
    const byAnHour = Math.abs(Math.abs(step - interval) - HOUR_MINUTES) <= SLACK_MINUTES;
    const changed = style === 'date' && byAnHour ? ifClocksChanged(timeZone, minutes[k]!) : '';
    findings.push({ line: lines[k]!, text: stepFault(step, interval) + changed });
  }
}

function stepFault(step: number, interval: number): string {
  if (step === 0) return 'the time is the same as the line before';
  if (step < 0) return 'the time is earlier than the line before';
  const missing = step / interval - 1;
  if (missing > 0.5 && Math.abs(missing - Math.round(missing)) < 0.01) {
    return `a gap: ${Math.round(missing)} reading${Math.round(missing) === 1 ? ' is' : 's are'} missing before this line`;
  }
  return `${told(step)} after the line before; the other lines are ${told(interval)} apart`;
}

function told(minutes: number): string {
  return minutes < 1 ? `${Math.round(minutes * 600) / 10} s` : `${Math.round(minutes * 100) / 100} min`;
}
