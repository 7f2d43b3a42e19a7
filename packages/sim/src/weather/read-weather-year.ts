/** An hourly weather year from the text of a file, whichever of the open layouts it has. */
import type { WeatherYear } from '../scenario/scenario.ts';
import { finishYear } from './finish-year.ts';
import type { FinishedYear, WeatherYearDefaults } from './finish-year.ts';
import { looksLikeEpw, readEpw } from './read-epw.ts';
import { looksLikeTable, readTable } from './read-table.ts';
import { looksLikeTmy3, readTmy3 } from './read-tmy3.ts';
import { isFault } from './weather-finding.ts';
import type { WeatherFinding } from './weather-finding.ts';
import { WeatherFileError } from './weather-file-error.ts';

/** A weather year as read from its file. */
export interface ReadWeatherYear {
  readonly year: WeatherYear;
  /** What was mended on the way, to be told. Worded by `describeWeatherFindings`. */
  readonly notes: readonly WeatherFinding[];
}

/**
 * Tells a TMY3 CSV file, an EPW file and a plain table apart by their first lines.
 *
 * @param defaults the site's own figures, for what a file leaves out.
 * @throws WeatherFileError with every fault found.
 */
export function readWeatherYear(
  text: string,
  fileName: string,
  defaults: WeatherYearDefaults = {},
): ReadWeatherYear {
  const { year, findings } = inspectWeatherYear(text, defaults);
  if (year === undefined) throw new WeatherFileError(fileName, findings.filter(isFault));
  return { year: { ...year, name: year.name || fileName }, notes: findings };
}

/** The same without throwing: every finding, and the year if none is a fault. */
export function inspectWeatherYear(text: string, defaults: WeatherYearDefaults = {}): FinishedYear {
  if (looksLikeEpw(text)) return finishYear(readEpw(text), defaults);
  if (looksLikeTmy3(text)) return finishYear(readTmy3(text), defaults);
  if (looksLikeTable(text)) return finishYear(readTable(text), defaults);
  return { year: undefined, findings: [{ code: 'unknown-layout' }] };
}
