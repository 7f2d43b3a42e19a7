/** A scenario from a file, with everything it names read in. */
import { ScenarioError, type Finding } from '../scenario/findings.ts';
import { lookOver, type LookedOver, type ReadScenario } from '../scenario/read-scenario.ts';
import { resolveScenario, unknownPlace, type Lookups } from '../scenario/resolve-scenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { schemaFindings } from '../scenario/schema-findings.ts';
import { startMonths } from '../scenario/schema-terms.ts';
import { sizeNotes } from '../scenario/size-notes.ts';
import { readTypicalAppliances } from '../usage/typical-appliances.ts';
import { readNormals } from '../weather/normals-table.ts';
import { siteNotes } from '../weather/site-notes.ts';
import { readDataFile } from './data-folder.ts';
import { readNamed } from './read-named.ts';
import { readText } from './read-text.ts';

/** A scenario with all that it names read in. */
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

/**
 * Reads a scenario file and all that it names.
 *
 * @throws ScenarioError, WeatherFileError or ProfileFileError, each with every fault of its file; an AggregateError of
 *   them where several files have faults
 */
export function loadScenario(path: string, options: LoadOptions = {}): LoadedScenario {
  const looked = lookOver(scenarioText(path), path, readTypicalAppliances(readDataFile('appliances.csv')));
  const { parts, whole } = looked.fitting;
  const site = whole.has('site') ? parts.site : undefined;
  const named = readNamed(looked.document, site, options.weatherYear);
  const normals = readNormals(readDataFile('normals.csv'));
  const findings = [
    ...monthFindings(options.months),
    ...looked.findings,
    ...placeFindings(looked, options, normals),
    ...named.findings,
  ];
  throwFaults(findings, named.errors);
  const read = withOptions(looked.read!, options);
  const { years, profiles } = named;
  const scenario = resolveScenario(read, { normals, years, profiles });
  const ofSizes = new Set(scenario.alternatives.flatMap(({ household }) => sizeNotes(household.units)));
  return { scenario, notes: [...siteNotes(read.scenario, normals), ...ofSizes, ...named.notes] };
}

/** One fault as it is; several in one message. */
function throwFaults(findings: readonly Finding[], ofFiles: readonly Error[]): void {
  const errors = findings.length === 0 ? ofFiles : [new ScenarioError(findings), ...ofFiles];
  if (errors.length === 1) throw errors[0]!;
  if (errors.length > 1) throw new AggregateError(errors, errors.map(({ message }) => message).join('\n'));
}

function scenarioText(path: string): string {
  const read = readText(path);
  if ('text' in read) return read.text;
  throw new ScenarioError([{ file: path, line: undefined, path: '', ...read.fault }]);
}

/** Months that are asked for are held to the rule for those of a scenario. */
function monthFindings(months: readonly number[] | undefined): Finding[] {
  const result = startMonths().optional().safeParse(months);
  if (result.success) return [];
  const document = { file: 'months', value: months, lineOf: () => 1 };
  return schemaFindings(result.error.issues, document, months).map((f) => ({ ...f, line: undefined }));
}

function placeFindings(
  { document, fitting: { parts, whole } }: LookedOver,
  { weatherYear }: LoadOptions,
  normals: Lookups['normals'],
): Finding[] {
  if (weatherYear !== undefined || !whole.has('weather')) return [];
  return [unknownPlace(parts.weather, document, normals) ?? []].flat();
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
