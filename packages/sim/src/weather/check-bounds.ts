/** Values that no weather has. */
import type { SettledHours } from './settle-hours.ts';
import type { RawColumns } from './raw-year.ts';
import type { WeatherColumn, WeatherFinding } from './weather-finding.ts';

interface Bounds {
  readonly column: Exclude<WeatherColumn, 'time'>;
  readonly key: keyof RawColumns;
  readonly least: number;
  readonly most: number;
}

/** Common practice, no source, but for the highest irradiance: hours measured so far stay below 1,600 W/m². */
const BOUNDS: readonly Bounds[] = [
  { column: 'GHI', key: 'ghi', least: 0, most: 1600 },
  { column: 'DNI', key: 'dni', least: 0, most: 1500 },
  { column: 'DHI', key: 'dhi', least: 0, most: 1200 },
  { column: 'dry-bulb', key: 'dryBulb', least: -90, most: 60 },
  { column: 'wind', key: 'wind', least: 0, most: 100 },
];
/** A thermopile sees the cold night sky as a few watts below nothing. */
const NIGHT_OFFSET_WM2 = 20;
/** Times the sunlight above the air; plus the slack, for clocks some minutes out with the sun at the horizon. */
const MOST_CLEARNESS = 1.5;
const HORIZON_SLACK_WM2 = 50;
/** The dullest places get a quarter and more of it in a year; a thousandth comes of kilowatts taken for watts. */
const LEAST_CLEARNESS_OF_YEAR = 0.1;

/** Reports what is out of bounds, as missing from then on; sets a night offset to 0. */
export function checkBounds({ lines, columns }: SettledHours, findings: WeatherFinding[]): void {
  for (const bounds of BOUNDS) {
    const values = columns[bounds.key];
    zeroNightOffset(values, lines, bounds, findings);
    const expected = `${bounds.least} to ${bounds.most}`;
    values.forEach((value, row) => {
      if (!(value < bounds.least || value > bounds.most)) return;
      findings.push({
        code: 'impossible-value',
        line: lines[row]!,
        column: bounds.column,
        found: value,
        expected,
      });
    });
  }
}

function zeroNightOffset(
  values: number[],
  lines: readonly number[],
  { column, key }: Bounds,
  findings: WeatherFinding[],
): void {
  if (key === 'dryBulb' || key === 'wind') return;
  let lowest = 0;
  const zeroed: number[] = [];
  values.forEach((value, row) => {
    if (!(value < 0 && value >= -NIGHT_OFFSET_WM2)) return;
    lowest = Math.min(lowest, value);
    zeroed.push(lines[row]!);
    values[row] = 0;
  });
  if (zeroed.length === 0) return;
  const place = { line: zeroed[0]!, lastLine: zeroed.at(-1)! };
  findings.push({ code: 'night-offset-zeroed', column, ...place, found: lowest, hours: zeroed.length });
}

/**
 * Reports GHI far above the sunlight that reaches the air in the same or a neighbouring hour, and a year of it far below.
 *
 * @param aboveWm2 extraterrestrial irradiance on the level, mean of each hour.
 */
export function checkAgainstSun(
  { lines, columns }: SettledHours,
  { aboveWm2 }: { readonly aboveWm2: Float64Array },
  findings: WeatherFinding[],
): void {
  const { length } = aboveWm2;
  columns.ghi.forEach((value, row) => {
    const brightest = Math.max(
      aboveWm2[(row + length - 1) % length]!,
      aboveWm2[row]!,
      aboveWm2[(row + 1) % length]!,
    );
    const most = Math.round(MOST_CLEARNESS * brightest + HORIZON_SLACK_WM2);
    if (!(value > most && value <= 1600)) return;
    findings.push({
      code: 'impossible-value',
      line: lines[row]!,
      column: 'GHI',
      found: value,
      expected: `0 to ${most}`,
    });
  });
  checkYear(columns.ghi, aboveWm2, findings);
}

function checkYear(ghi: readonly number[], aboveWm2: Float64Array, findings: WeatherFinding[]): void {
  if (ghi.some(Number.isNaN)) return; // a gap, told of its own accord
  const sum = (values: Iterable<number>) => [...values].reduce((all, value) => all + value, 0) / 1000;
  const [found, above] = [sum(ghi), sum(aboveWm2)];
  if (found >= LEAST_CLEARNESS_OF_YEAR * above) return;
  findings.push({
    code: 'too-dark',
    column: 'GHI',
    found: Number(found.toPrecision(3)),
    expected: Math.round(above),
  });
}
