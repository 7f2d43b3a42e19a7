/** Hourly weather years in the open EnergyPlus weather layout (US Department of Energy, Auxiliary Programs manual). */
import type { ColumnPlace } from './read-columns.ts';
import { readColumns } from './read-columns.ts';
import { fieldsOf, linesOf, numberOf, stampOf } from './raw-year.ts';
import type { RawYear } from './raw-year.ts';
import { readStationLine } from './station-line.ts';
import type { WeatherFinding } from './weather-finding.ts';

/** Field positions counted from 0, and the values that stand for missing. */
const PLACES: readonly ColumnPlace[] = [
  { column: 'GHI', key: 'ghi', index: 13, isMissing: (value) => value >= 9999 },
  { column: 'DNI', key: 'dni', index: 14, isMissing: (value) => value >= 9999 },
  { column: 'DHI', key: 'dhi', index: 15, isMissing: (value) => value >= 9999 },
  { column: 'dry-bulb', key: 'dryBulb', index: 6, isMissing: (value) => value === 99.9 },
  { column: 'wind', key: 'wind', index: 21, isMissing: (value) => value >= 999 },
];
const STATION = 'LOCATION, city, state, country, source, code, latitude, longitude, UTC offset, elevation';
const LAST_HEADER = 'DATA PERIODS';

export function looksLikeEpw(text: string): boolean {
  return /^\uFEFF?location,/i.test(text);
}

/** Header lines up to DATA PERIODS, then a line for each hour. Nothing is checked or mended here. */
export function readEpw(text: string): RawYear {
  const lines = linesOf(text);
  const station = readStationLine(lines[0] ?? '', 6, STATION);
  const [latitudeDeg, longitudeDeg, utcOffsetHours] = station.figures;
  const findings: WeatherFinding[] = [...station.findings];
  const last = lines.findIndex((line) => line.toUpperCase().startsWith(LAST_HEADER));
  if (last < 0) findings.push({ code: 'missing-column', expected: LAST_HEADER });
  else checkInterval(lines[last]!, last + 1, findings);
  const read = readColumns(lines, last < 0 ? 8 : last + 1, PLACES);
  return {
    name: station.name,
    utcOffsetHours,
    latitudeDeg,
    longitudeDeg,
    lines: read.lines,
    stamps: read.rows.map((row) => stampOf(Number(row[1]), Number(row[2]), Number(row[3]))),
    columns: read.columns,
    findings: [...findings, ...read.findings],
  };
}

/** DATA PERIODS, number of periods, values an hour, … */
function checkInterval(header: string, line: number, findings: WeatherFinding[]): void {
  const perHour = numberOf(fieldsOf(header)[2]);
  if (perHour !== 1) findings.push({ code: 'wrong-interval', line, found: perHour ?? header });
}
