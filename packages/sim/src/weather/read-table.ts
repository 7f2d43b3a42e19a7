/** Hourly weather years as a plain table. */
import type { ColumnPlace, ReadRows } from './read-columns.ts';
import { readColumns } from './read-columns.ts';
import { fieldsOf, linesOf, numberOf, stampOf } from './raw-year.ts';
import type { RawColumns, RawYear } from './raw-year.ts';
import type { WeatherColumn, WeatherFinding } from './weather-finding.ts';

/**
 * Column names, which carry their units. Irradiance is the mean over the hour; the others are at its end.
 * `ghi_w_m2` and `dry_bulb_c` are needed; the rest may be left out and is then filled in and told.
 */
const COLUMN_NAMES: readonly (readonly [Exclude<WeatherColumn, 'time'>, keyof RawColumns, string])[] = [
  ['GHI', 'ghi', 'ghi_w_m2'],
  ['DNI', 'dni', 'dni_w_m2'],
  ['DHI', 'dhi', 'dhi_w_m2'],
  ['dry-bulb', 'dryBulb', 'dry_bulb_c'],
  ['wind', 'wind', 'wind_m_s'],
];
const NEEDED = new Set(['ghi_w_m2', 'dry_bulb_c']);
const TIME_NAME = 'time';

export function looksLikeTable(text: string): boolean {
  const { header } = headerOf(linesOf(text.slice(0, 20_000)));
  return header.some((name) => COLUMN_NAMES.some(([, , known]) => known === name));
}

/**
 * A CSV table of the hours of one year in order. Lines that start with # come first and may give
 * `# name: …`, `# latitude_deg: …`, `# longitude_deg: …`, `# utc_offset_h: …`; then the column names; then a line for
 * each hour. An optional column `time` holds the hour's end in local standard time, "2023-01-31T13:00" (the year may be
 * left out; midnight is 24:00 of the day that ends or 00:00 of the next). Nothing is checked or mended here.
 */
export function readTable(text: string): RawYear {
  const lines = linesOf(text);
  const { header, headerIndex, remarks } = headerOf(lines);
  const findings: WeatherFinding[] = [];
  const places = COLUMN_NAMES.map(([column, key, name]): ColumnPlace => {
    const index = header.indexOf(name);
    if (index < 0 && NEEDED.has(name)) {
      findings.push({
        code: 'missing-column',
        line: headerIndex + 1,
        expected: name,
        found: header.join(', '),
      });
    }
    return { column, key, index, isMissing: () => false };
  });
  const read = readColumns(lines, headerIndex + 1, places);
  const timeIndex = header.indexOf(TIME_NAME);
  return {
    name: remarks.get('name') ?? '',
    utcOffsetHours: finite(remarks.get('utc_offset_h')),
    latitudeDeg: finite(remarks.get('latitude_deg')),
    longitudeDeg: finite(remarks.get('longitude_deg')),
    lines: read.lines,
    stamps: timeIndex < 0 ? undefined : read.rows.map((row) => stampOfTime(row[timeIndex] ?? '')),
    columns: read.columns,
    findings: [...findings, ...tooManyCells(read, header.length), ...read.findings],
  };
}

/** A decimal comma would move every column after it. */
function tooManyCells({ rows, lines }: ReadRows, columns: number): WeatherFinding[] {
  return rows.flatMap((row, i): WeatherFinding[] =>
    row.slice(columns).some((cell) => cell.trim() !== '')
      ? [{ code: 'too-many-cells', line: lines[i]!, found: row.length, expected: columns }]
      : [],
  );
}

function headerOf(lines: readonly string[]): {
  header: string[];
  headerIndex: number;
  remarks: Map<string, string>;
} {
  const remarks = new Map<string, string>();
  let index = 0;
  for (; index < lines.length; index++) {
    const line = lines[index]!.trim();
    if (line !== '' && !line.startsWith('#')) break;
    const [, key, value] = /^#\s*(\w+)\s*:\s*(.+)$/.exec(line) ?? [];
    if (key !== undefined && value !== undefined) remarks.set(key.toLowerCase(), value.trim());
  }
  const header = fieldsOf(lines[index] ?? '').map((name) => name.trim().toLowerCase());
  return { header, headerIndex: index, remarks };
}

function finite(text: string | undefined): number | undefined {
  const value = numberOf(text);
  return value === undefined || Number.isNaN(value) ? undefined : value;
}

/** "MM-DD HH"; what cannot be read is kept as it is, for the order check to show. */
function stampOfTime(text: string): string {
  const [, year, month, day, hour] = /^\s*(?:(\d{4})-)?(\d\d)-(\d\d)[T ](\d\d)(?::00)*\s*$/.exec(text) ?? [];
  if (hour === undefined) return text.trim();
  if (hour !== '00') return stampOf(Number(month), Number(day), Number(hour));
  const before = new Date(Date.UTC(Number(year ?? COMMON_YEAR), Number(month) - 1, Number(day) - 1));
  return stampOf(before.getUTCMonth() + 1, before.getUTCDate(), 24);
}

/** For times without a year: which day precedes 1 March. */
const COMMON_YEAR = 2001;
