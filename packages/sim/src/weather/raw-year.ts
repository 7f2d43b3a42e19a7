/** A weather file taken apart, before anything is checked or mended. */
import { csvParseRows } from 'd3-dsv';
import type { WeatherFinding } from './weather-finding.ts';

/** One value per data row, in the file's order; NaN where it is missing. */
export interface RawColumns {
  readonly ghi: number[];
  readonly dni: number[];
  readonly dhi: number[];
  readonly dryBulb: number[];
  readonly wind: number[];
}

export interface RawYear {
  readonly name: string;
  readonly utcOffsetHours: number | undefined;
  readonly latitudeDeg: number | undefined;
  readonly longitudeDeg: number | undefined;
  /** Line of the file of each row. */
  readonly lines: number[];
  /** Hour-ending stamp of each row, "MM-DD HH" with hours 01…24; undefined when the file has no time column. */
  readonly stamps: string[] | undefined;
  readonly columns: RawColumns;
  /** Faults met on the way: values that are no numbers, a broken header. */
  readonly findings: WeatherFinding[];
}

/** Lines of a text with LF or CRLF ends, without a byte-order mark. */
export function linesOf(text: string): string[] {
  return text.replace(/^\uFEFF/, '').split(/\r?\n/);
}

/** Fields of one line; commas inside double quotes do not count. Nearly every line of a year has none. */
export function fieldsOf(line: string): string[] {
  if (!line.includes('"')) return line.split(',');
  return csvParseRows(line)[0] ?? [];
}

/** "MM-DD HH". */
export function stampOf(month: number, day: number, hour: number): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(month)}-${two(day)} ${two(hour)}`;
}

const BLANK = /^(|na|nan|null)$/i;

/**
 * Reads one field as a number: NaN for a blank, undefined for what is neither.
 */
export function numberOf(field: string | undefined): number | undefined {
  const text = (field ?? '').trim();
  if (BLANK.test(text)) return NaN;
  const value = Number(text);
  return Number.isFinite(value) ? value : undefined;
}
