/** Hourly typical years in the CSV layout of the TMY3 data sets (NREL/TP-581-43156, Wilcox & Marion 2008). */
import type { ColumnPlace } from './read-columns.ts';
import { readColumns } from './read-columns.ts';
import { fieldsOf, linesOf, stampOf } from './raw-year.ts';
import type { RawYear } from './raw-year.ts';
import { readStationLine } from './station-line.ts';
import type { WeatherFinding } from './weather-finding.ts';

const STATION = 'code, name, state, UTC offset, latitude, longitude, elevation';
const COLUMN_NAMES = [
  ['GHI', 'ghi', 'GHI (W/m^2)'],
  ['DNI', 'dni', 'DNI (W/m^2)'],
  ['DHI', 'dhi', 'DHI (W/m^2)'],
  ['dry-bulb', 'dryBulb', 'Dry-bulb (C)'],
  ['wind', 'wind', 'Wspd (m/s)'],
] as const;

/** Missing is -9900; nothing measured comes near. */
const isMissing = (value: number): boolean => value <= -9000;

export function looksLikeTmy3(text: string): boolean {
  return /^date \(mm\/dd\/yyyy\),/i.test(linesOf(text.slice(0, 20_000))[1] ?? '');
}

/** First line the station, second the column names, then a line for each hour. Nothing is checked or mended here. */
export function readTmy3(text: string): RawYear {
  const lines = linesOf(text);
  const station = readStationLine(lines[0] ?? '', 3, STATION);
  const [utcOffsetHours, latitudeDeg, longitudeDeg] = station.figures;
  const findings: WeatherFinding[] = [...station.findings];
  const names = fieldsOf(lines[1] ?? '').map((name) => name.trim().toLowerCase());
  const places = COLUMN_NAMES.map(([column, key, title]): ColumnPlace => {
    const index = names.indexOf(title.toLowerCase());
    if (index < 0) findings.push({ code: 'missing-column', line: 2, expected: title });
    return { column, key, index, isMissing };
  });
  const read = readColumns(lines, 2, places);
  return {
    name: station.name,
    utcOffsetHours,
    latitudeDeg,
    longitudeDeg,
    lines: read.lines,
    stamps: read.rows.map(([date = '', time = '']) => stampOfRow(date, time)),
    columns: read.columns,
    findings: [...findings, ...read.findings],
  };
}

/** From "01/31/1990" and "13:00"; what cannot be read is kept as it is, for the order check to show. */
function stampOfRow(date: string, time: string): string {
  const [month, day] = date.split('/').map(Number);
  const hour = Number(time.split(':')[0]);
  if (month === undefined || day === undefined || !(month * day * hour > 0)) return `${date} ${time}`.trim();
  return stampOf(month, day, hour);
}
