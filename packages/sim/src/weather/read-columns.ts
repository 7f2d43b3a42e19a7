/** The rows of a weather file into columns of numbers. */
import { fieldsOf, numberOf } from './raw-year.ts';
import type { RawColumns } from './raw-year.ts';
import type { WeatherColumn, WeatherFinding } from './weather-finding.ts';

/** Where a quantity stands in a row, and which values mean that it is missing. */
export interface ColumnPlace {
  readonly column: Exclude<WeatherColumn, 'time'>;
  readonly key: keyof RawColumns;
  /** From 0; -1 when the file has no such column. */
  readonly index: number;
  readonly isMissing: (value: number) => boolean;
}

export interface ReadRows {
  readonly lines: number[];
  readonly rows: string[][];
  readonly columns: RawColumns;
  readonly findings: WeatherFinding[];
}

/** Reads the lines from `firstIndex` on; blank lines are passed over. */
export function readColumns(
  lines: readonly string[],
  firstIndex: number,
  places: readonly ColumnPlace[],
): ReadRows {
  const columns: RawColumns = { ghi: [], dni: [], dhi: [], dryBulb: [], wind: [] };
  const read: ReadRows = { lines: [], rows: [], columns, findings: [] };
  for (let index = firstIndex; index < lines.length; index++) {
    if (lines[index]!.trim() === '') continue;
    const fields = fieldsOf(lines[index]!);
    read.lines.push(index + 1);
    read.rows.push(fields);
    for (const place of places) columns[place.key].push(readField(fields, place, index + 1, read.findings));
  }
  return read;
}

function readField(fields: string[], place: ColumnPlace, line: number, findings: WeatherFinding[]): number {
  if (place.index < 0) return NaN;
  const field = fields[place.index];
  const value = numberOf(field);
  if (value === undefined) {
    findings.push({ code: 'not-a-number', line, column: place.column, found: field!.trim() });
    return NaN;
  }
  return place.isMissing(value) ? NaN : value;
}
