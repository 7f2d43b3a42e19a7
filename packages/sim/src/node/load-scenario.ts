/** A scenario from a file, with everything it names read in. */
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { ScenarioError, type Finding } from '../scenario/findings.ts';
import { readScenario, type ReadScenario } from '../scenario/read-scenario.ts';
import { filesNamed, resolveScenario } from '../scenario/resolve-scenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { profileHints, profileZoneHints } from '../usage/profile-hints.ts';
import { readProfile } from '../usage/read-profile.ts';
import { readTypicalAppliances } from '../usage/typical-appliances.ts';
import { normalsNotes } from '../weather/normals-notes.ts';
import { placeNotes } from '../weather/place-notes.ts';
import { describeWeatherFindings } from '../weather/messages.ts';
import { readNormals } from '../weather/normals-table.ts';
import { readWeatherYear } from '../weather/read-weather-year.ts';
import { readDataFile } from './data-folder.ts';

export interface LoadedScenario {
  readonly scenario: Scenario;
  /** What was mended on the way, in sentences: gaps filled in a weather year and the like. */
  readonly notes: readonly string[];
}

/** Overrides from the command line. */
export interface LoadOptions {
  /** A weather year to use instead of the scenario's weather, path from the working folder. */
  readonly weatherYear?: string | undefined;
  /** Months in which the outage starts, instead of the scenario's start. */
  readonly months?: readonly number[] | undefined;
}

/** @throws ScenarioError, WeatherFileError or ProfileFileError, each with every fault of its file */
export function loadScenario(path: string, options: LoadOptions = {}): LoadedScenario {
  const read = withOptions(
    readScenario(readText(path), path, readTypicalAppliances(readDataFile('appliances.csv'))),
    options,
  );
  const folder = options.weatherYear === undefined ? dirname(path) : '.';
  const { years, profiles } = filesNamed(read);
  const notes: string[] = [];
  const yearOf = (file: string) => {
    const { year, notes: mended } = readWeatherYear(
      readText(resolve(folder, file), options.weatherYear === undefined ? read.file : '--weather', file),
      file,
      read.scenario.site,
    );
    if (mended.length > 0) notes.push(describeWeatherFindings(mended, file));
    return year;
  };
  const profileOf = (file: string) => {
    const text = readText(resolve(dirname(path), file), read.file, file);
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

/** The text of a file; a missing one is a finding of the scenario or the option that names it, or of the command line. */
function readText(path: string, namedBy?: string, named?: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const finding: Finding = {
      file: namedBy ?? path,
      line: undefined,
      path: named === undefined ? '' : named,
      found:
        code === 'ENOENT'
          ? `no file at ${path}`
          : code === 'EISDIR'
            ? `a folder at ${path}`
            : `a file that cannot be read (${code})`,
      expected: 'a file that can be read',
      hint: undefined,
    };
    throw new ScenarioError([finding]);
  }
}
