/** Whether the household can be used as it stands, and what has to be mended. */
import {
  filesNamed,
  isScenarioError,
  readScenario,
  readWeatherYear,
  resolveScenario,
  siteNotes,
  type Finding,
  type ReadScenario,
  type Scenario,
  type ScenarioSpec,
  type WeatherYear,
} from '@rideout/sim';
import type { NamedFiles } from './house-from-scenario.ts';
import type { HouseTables } from './house-tables.ts';

export interface HouseCheck {
  /** Ready to be simulated; undefined while something has to be mended or a file is missing. */
  readonly scenario: Scenario | undefined;
  readonly findings: readonly Finding[];
  /** Files that are named and not yet given to the page. */
  readonly missing: { readonly profiles: readonly string[]; readonly years: readonly string[] };
  /** What is to be looked at twice in where it is and in its weather. */
  readonly notes: readonly string[];
}

export const NONE_MISSING: HouseCheck['missing'] = { profiles: [], years: [] };

/** By the very rules of the command line. */
export function checkHouse(spec: ScenarioSpec, files: NamedFiles, tables: HouseTables): HouseCheck {
  return checkText(JSON.stringify(spec), 'this form', files, tables);
}

export function checkText(text: string, name: string, files: NamedFiles, tables: HouseTables): HouseCheck {
  try {
    return checkRead(readScenario(text, name, tables.typical), files, tables);
  } catch (error) {
    if (!isScenarioError(error)) throw error;
    return { scenario: undefined, findings: error.findings, missing: NONE_MISSING, notes: [] };
  }
}

function checkRead(read: ReadScenario, files: NamedFiles, tables: HouseTables): HouseCheck {
  const notes = siteNotes(read.scenario, tables.places);
  const named = filesNamed(read);
  const missing = {
    profiles: named.profiles.filter((name) => !files.profiles.has(name)),
    years: named.years.filter((name) => !files.years.has(name)),
  };
  if (missing.profiles.length + missing.years.length > 0)
    return { scenario: undefined, findings: [], missing, notes };
  const years = new Map(named.years.map((name) => [name, yearOf(name, files, read)]));
  const scenario = resolveScenario(read, { normals: tables.places, years, profiles: files.profiles });
  return { scenario, findings: [], missing, notes };
}

function yearOf(name: string, { years }: NamedFiles, read: ReadScenario): WeatherYear {
  const given = years.get(name)!;
  return typeof given === 'string' ? readWeatherYear(given, name, read.scenario.site).year : given;
}
