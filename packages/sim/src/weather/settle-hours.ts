/** Exactly the hours of a common year, in order. */
import { DAYS_PER_YEAR, MONTH_STARTS, monthLength } from './calendar.ts';
import { stampOf } from './raw-year.ts';
import type { RawColumns, RawYear } from './raw-year.ts';
import type { WeatherFinding } from './weather-finding.ts';

/** Rows of a common year: 8,760 where all is well. The arrays are copies. */
export interface SettledHours {
  readonly lines: readonly number[];
  readonly columns: RawColumns;
}

const HOURS_PER_YEAR = 24 * DAYS_PER_YEAR;
const HOURS_PER_LEAP_YEAR = HOURS_PER_YEAR + 24;
const LEAP_DAY_FIRST_HOUR = 24 * (31 + 28);

/** Leaves out 29 February and reports a wrong count or order of hours. */
export function settleHours(raw: RawYear, findings: WeatherFinding[]): SettledHours {
  const isLeapDay = leapDayTest(raw);
  const keep = raw.lines.map((_, row) => !isLeapDay(row));
  const pick = <T>(values: readonly T[]): T[] => values.filter((_, row) => keep[row]);
  const { ghi, dni, dhi, dryBulb, wind } = raw.columns;
  const lines = pick(raw.lines);
  const dropped = raw.lines.length - lines.length;
  if (dropped > 0) {
    const line = raw.lines[keep.indexOf(false)]!;
    findings.push({ code: 'leap-day-dropped', line, lastLine: line + dropped - 1, hours: dropped });
  }
  if (raw.stamps !== undefined) checkOrder(pick(raw.stamps), lines, findings);
  if (lines.length !== HOURS_PER_YEAR) {
    findings.push({ code: 'wrong-length', found: lines.length, expected: HOURS_PER_YEAR });
  }
  return {
    lines,
    columns: { ghi: pick(ghi), dni: pick(dni), dhi: pick(dhi), dryBulb: pick(dryBulb), wind: pick(wind) },
  };
}

/** By the stamps, or by position in a table of a leap year without them. */
function leapDayTest({ stamps, lines }: RawYear): (row: number) => boolean {
  if (stamps !== undefined) return (row) => stamps[row]!.startsWith('02-29');
  if (lines.length !== HOURS_PER_LEAP_YEAR) return () => false;
  return (row) => row >= LEAP_DAY_FIRST_HOUR && row < LEAP_DAY_FIRST_HOUR + 24;
}

/** Reports the first hour that is not the one due; what follows it would all be shifted. */
function checkOrder(stamps: readonly string[], lines: readonly number[], findings: WeatherFinding[]): void {
  const due = stampsOfYear();
  const row = stamps.findIndex((stamp, index) => stamp !== due[index]);
  if (row < 0) return;
  findings.push({
    code: 'out-of-order',
    line: lines[row]!,
    column: 'time',
    found: stamps[row]!,
    expected: due[row] ?? 'the end of the year',
  });
}

function stampsOfYear(): string[] {
  return MONTH_STARTS.flatMap((_, month) =>
    Array.from({ length: 24 * monthLength(month) }, (__, hour) =>
      stampOf(month + 1, Math.floor(hour / 24) + 1, (hour % 24) + 1),
    ),
  );
}
