/** The files that a scenario names, read: what is wrong with any hides nothing of the others. */
import { dirname, resolve } from 'node:path';
import type { Finding } from '../scenario/findings.ts';
import type { LocatedDocument } from '../scenario/located-document.ts';
import { namedFiles, type NamedFile } from '../scenario/named-files.ts';
import type { MeasuredProfile, WeatherYear } from '../scenario/scenario.ts';
import { spellPath } from '../scenario/schema-findings.ts';
import type { SiteSpec } from '../scenario/schema.ts';
import { ProfileFileError } from '../usage/profile-file-error.ts';
import { profileHints, profileZoneHints } from '../usage/profile-hints.ts';
import { readProfile } from '../usage/read-profile.ts';
import { describeWeatherFindings } from '../weather/messages.ts';
import { readWeatherYear } from '../weather/read-weather-year.ts';
import { WeatherFileError } from '../weather/weather-file-error.ts';
import { readText } from './read-text.ts';

/** What the files hold, by the path written in the scenario, and what is wrong with them. */
export interface ReadNamed {
  readonly years: ReadonlyMap<string, WeatherYear>;
  readonly profiles: ReadonlyMap<string, MeasuredProfile>;
  /** Files that are not there or are no text. */
  readonly findings: readonly Finding[];
  /** Files whose text cannot be used. */
  readonly errors: readonly (WeatherFileError | ProfileFileError)[];
  /** What was mended or passed over, in sentences. */
  readonly notes: readonly string[];
}

/**
 * @param site undefined where the scenario does not say it soundly: texts are then found, and not read, for what they mean
 *   hangs on it
 * @param weatherYear in the place of the scenario's own, path from the working folder
 */
export function readNamed(
  document: LocatedDocument,
  site: SiteSpec | undefined,
  weatherYear: string | undefined,
): ReadNamed {
  const years = new Map<string, WeatherYear>();
  const profiles = new Map<string, MeasuredProfile>();
  const findings: Finding[] = [];
  const errors: (WeatherFileError | ProfileFileError)[] = [];
  const notes: string[] = [];
  for (const named of filesToRead(document, weatherYear)) {
    const read = readText(named.place);
    if ('fault' in read) findings.push({ ...named.where, ...read.fault });
    else if (site !== undefined) {
      try {
        if (named.kind === 'year') years.set(named.file, yearOf(read.text, named.file, site, notes));
        else profiles.set(named.file, profileOf(read.text, named.file, site, notes));
      } catch (error) {
        if (!(error instanceof WeatherFileError || error instanceof ProfileFileError)) throw error;
        errors.push(error);
      }
    }
  }
  return { years, profiles, findings, errors, notes };
}

interface FileToRead extends Pick<NamedFile, 'kind' | 'file'> {
  /** Its path from the working folder. */
  readonly place: string;
  /** Of the name, for a finding. */
  readonly where: Pick<Finding, 'file' | 'line' | 'path'>;
}

function filesToRead(document: LocatedDocument, weatherYear: string | undefined): FileToRead[] {
  const inScenario = namedFiles(document).map(({ kind, file, path }): FileToRead => ({
    kind,
    file,
    place: resolve(dirname(document.file), file),
    where: { file: document.file, line: document.lineOf(path), path: spellPath(document.value, path) },
  }));
  if (weatherYear === undefined) return inScenario;
  const where = { file: '--weather', line: undefined, path: weatherYear };
  return [
    { kind: 'year', file: weatherYear, place: resolve(weatherYear), where },
    ...inScenario.filter(({ kind }) => kind !== 'year'),
  ];
}

function yearOf(text: string, file: string, site: SiteSpec, notes: string[]): WeatherYear {
  const { year, notes: mended } = readWeatherYear(text, file, site);
  if (mended.length > 0) notes.push(describeWeatherFindings(mended, file));
  return year;
}

function profileOf(text: string, file: string, { timeZone }: SiteSpec, notes: string[]): MeasuredProfile {
  const hints: string[] = [];
  const profile = readProfile(text, file, { timeZone, onNote: (note) => hints.push(note) });
  hints.push(...profileHints(profile), ...profileZoneHints(text));
  notes.push(...hints.map((hint) => `${file}: ${hint}`));
  return profile;
}
