/** Missing hours: few in a row are filled in, more are refused. */
import type { RawColumns } from './raw-year.ts';
import type { SettledHours } from './settle-hours.ts';
import type { WeatherColumn, WeatherFinding } from './weather-finding.ts';

const MOST_HOURS_IN_A_ROW = 3;

const NAMES: readonly (readonly [Exclude<WeatherColumn, 'time'>, keyof RawColumns])[] = [
  ['GHI', 'ghi'],
  ['DNI', 'dni'],
  ['DHI', 'dhi'],
  ['dry-bulb', 'dryBulb'],
  ['wind', 'wind'],
];

/**
 * Fills gaps along a straight line between the hours on either side (31 December joins 1 January). DNI and DHI that are
 * missing altogether are left for `completeIrradiance`.
 */
export function fillGaps({ lines, columns }: SettledHours, findings: WeatherFinding[]): void {
  for (const [column, key] of NAMES) {
    const values = columns[key];
    if ((key === 'dni' || key === 'dhi') && values.every(Number.isNaN)) continue;
    for (const { first, hours } of gapsIn(values)) {
      const last = (first + hours - 1) % values.length;
      const place = { column, line: lines[first]!, lastLine: lines[last]!, hours };
      if (hours > MOST_HOURS_IN_A_ROW) {
        findings.push({ code: 'gap-too-long', ...place, expected: MOST_HOURS_IN_A_ROW });
        continue;
      }
      findings.push({ code: 'gap-filled', ...place });
      bridge(values, first, hours);
    }
  }
}

/** Runs of NaN, the year taken as a ring: a run over its end is one. */
function gapsIn(values: readonly number[]): { first: number; hours: number }[] {
  const { length } = values;
  if (values.every(Number.isNaN)) return [{ first: 0, hours: length }];
  const gaps: { first: number; hours: number }[] = [];
  values.forEach((value, row) => {
    if (!Number.isNaN(value) || Number.isNaN(values[(row + length - 1) % length]!)) return;
    let hours = 1;
    while (Number.isNaN(values[(row + hours) % length]!)) hours++;
    gaps.push({ first: row, hours });
  });
  return gaps;
}

function bridge(values: number[], first: number, hours: number): void {
  const { length } = values;
  const before = values[(first + length - 1) % length]!;
  const after = values[(first + hours) % length]!;
  for (let k = 0; k < hours; k++) {
    values[(first + k) % length] = before + ((after - before) * (k + 1)) / (hours + 1);
  }
}
