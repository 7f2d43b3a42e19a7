/** A scenario from a file, with everything it names read in. */
import { dirname, resolve } from 'node:path';
import { ScenarioError } from '../scenario/findings.ts';
import { readScenario, type ReadScenario } from '../scenario/read-scenario.ts';
import { filesNamed, resolveScenario } from '../scenario/resolve-scenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { schemaFindings } from '../scenario/schema-findings.ts';
import { startMonths } from '../scenario/schema-terms.ts';
import { profileHints, profileZoneHints } from '../usage/profile-hints.ts';
import { readProfile } from '../usage/read-profile.ts';
import { readTypicalAppliances } from '../usage/typical-appliances.ts';
import { normalsNotes } from '../weather/normals-notes.ts';
import { placeNotes } from '../weather/place-notes.ts';
import { describeWeatherFindings } from '../weather/messages.ts';
import { readNormals } from '../weather/normals-table.ts';
import { readWeatherYear } from '../weather/read-weather-year.ts';
import { readDataFile } from './data-folder.ts';
import { readText } from './read-text.ts';

export interface LoadedScenario {
  readonly scenario: Scenario;
  /** What was mended on the way, in sentences: gaps filled in a weather year and the like. */
  readonly notes: readonly string[];
}

/** Overrides from the command line. */
export interface LoadOptions {
  /** A weather year to use instead of the scenario's weather, path from the working folder. */
  readonly weatherYear?: string | undefined;
  /** Months in which the outage starts, 1 to 12, instead of the scenario's start. */
  readonly months?: readonly number[] | undefined;
}

/** @throws ScenarioError, WeatherFileError or ProfileFileError, each with every fault of its file */
export function loadScenario(path: string, options: LoadOptions = {}): LoadedScenario {
  assertMonths(options.months);
  const read = withOptions(
    readScenario(textOf(path), path, readTypicalAppliances(readDataFile('appliances.csv'))),
    options,
  );
  const folder = options.weatherYear === undefined ? dirname(path) : '.';
  const { years, profiles } = filesNamed(read);
  const notes: string[] = [];
  const yearOf = (file: string) => {
    const { year, notes: mended } = readWeatherYear(
      textOf(resolve(folder, file), options.weatherYear === undefined ? read.file : '--weather', file),
      file,
      read.scenario.site,
    );
    if (mended.length > 0) notes.push(describeWeatherFindings(mended, file));
    return year;
  };
  const profileOf = (file: string) => {
    const text = textOf(resolve(dirname(path), file), read.file, file);
    const hints: string[] = [];
    const { timeZone } = read.scenario.site;
    const profile = readProfile(text, file, { timeZone, onNote: (note) => hints.push(note) });
    hints.push(...profileHints(profile), ...profileZoneHints(text));
    notes.push(...hints.map((hint) => `${file}: ${hint}`));
    return profile;
  };
  const normals = readNormals(readDataFile('normals.csv'));
  const { site, weather } = read.scenario;
  notes.push(...placeNotes(site, normals.get(weather.normals ?? '')));
  if (weather.monthly !== undefined) notes.push(...normalsNotes(weather.monthly));
  const scenario = resolveScenario(read, {
    normals,
    years: new Map(years.map((file) => [file, yearOf(file)])),
    profiles: new Map(profiles.map((file) => [file, profileOf(file)])),
  });
  return { scenario, notes };
}

function withOptions(read: ReadScenario, { weatherYear, months }: LoadOptions): ReadScenario {
  const { weather, outage } = read.scenario;
  return {
    ...read,
    scenario: {
      ...read.scenario,
      weather:
        weatherYear === undefined
          ? weather
          : { ...weather, normals: undefined, monthly: undefined, yearFile: weatherYear },
      outage: months === undefined ? outage : { ...outage, startLocal: undefined, months: [...months] },
    },
  };
}

/** The text of a file; a fault is a finding of the scenario or the option that names it, or of the command line. */
function textOf(path: string, namedBy = path, named = ''): string {
  const read = readText(path);
  if ('text' in read) return read.text;
  throw new ScenarioError([{ file: namedBy, line: undefined, path: named, ...read.fault }]);
}

/** Months that are asked for are held to the rule for those of a scenario. */
function assertMonths(months: readonly number[] | undefined): void {
  if (months === undefined) return;
  const result = startMonths().safeParse(months);
  if (result.success) return;
  const document = { file: 'months', value: months, lineOf: () => 1 };
  const findings = schemaFindings(result.error.issues, document, months);
  throw new ScenarioError(findings.map((finding) => ({ ...finding, line: undefined })));
}
