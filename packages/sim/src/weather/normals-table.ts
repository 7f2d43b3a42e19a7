/** Places and their monthly normals from the text of data/normals.csv. */
import type { MonthlyNormals } from '../scenario/scenario.ts';
import type { ObservedNormals } from './observed-normals.ts';
import { fieldsOf, linesOf, numberOf } from './raw-year.ts';
import { correctTypicalYear } from './typical-year.ts';

/** One place of the table of climate normals. */
export interface NormalsPlace {
  /** What a scenario calls it. */
  readonly id: string;
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  readonly utcOffsetHours: number;
  /** Of one typical year, or measured over many. */
  readonly kind: 'typical-year' | 'measured';
  readonly dataset: string;
  readonly observed: ObservedNormals;
  /** What the generator works from: `observed`, blanks filled, and corrected when it is of a typical year. */
  readonly monthly: MonthlyNormals;
}

const SERIES: readonly (readonly [keyof ObservedNormals, string])[] = [
  ['clearnessMean', 'clearness_mean'],
  ['clearnessSd', 'clearness_sd'],
  ['clearnessLag1', 'clearness_lag1'],
  ['dryBulbMeanC', 'dry_bulb_mean_c'],
  ['dryBulbDailyRangeC', 'dry_bulb_daily_range_c'],
  ['dryBulbSdC', 'dry_bulb_sd_c'],
  ['dryBulbLag1', 'dry_bulb_lag1'],
  ['clearnessDryBulbCorrelation', 'clearness_dry_bulb_correlation'],
];

/**
 * Reads the table of climate normals, data/normals.csv.
 *
 * @returns places by id, in the order of the table.
 * @throws Error naming the place or line that is not as it should be.
 */
export function readNormals(text: string): ReadonlyMap<string, NormalsPlace> {
  const [header, ...rows] = linesOf(text)
    .filter((line) => line.trim() !== '')
    .map(fieldsOf);
  const months = rows.map((row) => new Map((header ?? []).map((name, index) => [name, row[index] ?? ''])));
  const byPlace = new Map<string, Map<string, string>[]>();
  for (const month of months) {
    const id = month.get('place') ?? '';
    byPlace.set(id, [...(byPlace.get(id) ?? []), month]);
  }
  return new Map([...byPlace].map(([id, rowsOfPlace]) => [id, placeFrom(id, rowsOfPlace)]));
}

function placeFrom(id: string, rows: readonly ReadonlyMap<string, string>[]): NormalsPlace {
  const inOrder = rows.every((row, index) => Number(row.get('month')) === index + 1);
  if (rows.length !== 12 || !inOrder) {
    throw new Error(
      `normals.csv, place "${id}": ${rows.length} rows; twelve are expected, months 1 to 12 in order`,
    );
  }
  const series = (column: string): number[] =>
    rows.map((row, index) => cell(row, column, `${id}, month ${index + 1}`));
  const first = rows[0]!;
  const kind = first.get('kind') === 'measured' ? 'measured' : 'typical-year';
  const observed = Object.fromEntries(
    SERIES.map(([key, column]) => [key, series(column)]),
  ) as unknown as ObservedNormals;
  const filled = Object.fromEntries(
    SERIES.map(([key]) => [key, withoutBlanks(observed[key])]),
  ) as unknown as ObservedNormals;
  return {
    id,
    name: first.get('title') ?? id,
    latitudeDeg: cell(first, 'latitude_deg', id),
    longitudeDeg: cell(first, 'longitude_deg', id),
    elevationM: cell(first, 'elevation_m', id),
    utcOffsetHours: cell(first, 'utc_offset_h', id),
    kind,
    dataset: first.get('dataset') ?? '',
    observed,
    monthly: kind === 'measured' ? filled : correctTypicalYear(filled),
  };
}

function cell(row: ReadonlyMap<string, string>, column: string, where: string): number {
  const text = row.get(column);
  const value = text === undefined ? undefined : numberOf(text);
  if (value === undefined)
    throw new Error(`normals.csv, ${where}: ${column} reads "${text ?? ''}"; a number is expected`);
  return value;
}

/** Blanks on the straight line between the nearest months that have a value, December followed by January. */
function withoutBlanks(values: readonly number[]): number[] {
  const known = (from: number, step: number): number => {
    let distance = 0;
    while (distance < 12 && Number.isNaN(values[(((from + step * distance) % 12) + 12) % 12]!)) distance++;
    return distance;
  };
  return values.map((value, month) => {
    if (!Number.isNaN(value)) return value;
    const back = known(month, -1);
    const ahead = known(month, 1);
    const before = values[(month - back + 12) % 12]!;
    const after = values[(month + ahead) % 12]!;
    return before + ((after - before) * back) / (back + ahead);
  });
}
