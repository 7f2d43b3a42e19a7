/** The first line of a weather file: the station and where it stands. */
import { fieldsOf, numberOf } from './raw-year.ts';
import type { WeatherFinding } from './weather-finding.ts';

export interface StationLine {
  readonly name: string;
  /** Three figures in a row, in the layout's order; undefined where the field is no number. */
  readonly figures: readonly [number | undefined, number | undefined, number | undefined];
  readonly findings: readonly WeatherFinding[];
}

/**
 * @param firstAt position of the first of the three figures; the name is the second field
 * @param expected the line as it should be
 */
export function readStationLine(line: string, firstAt: number, expected: string): StationLine {
  const fields = fieldsOf(line);
  const figure = (at: number) => numberOf(fields[firstAt + at]);
  const figures = [figure(0), figure(1), figure(2)] as const;
  return {
    name: (fields[1] ?? '').trim(),
    figures,
    findings: figures.every(Number.isFinite) ? [] : [{ code: 'bad-station', line: 1, found: line, expected }],
  };
}
