/** Puts what a scenario only names inside it: its weather and its measured profiles. */
import type {
  MonthlyNormals,
  Scenario,
  WeatherSource,
  WeatherYear,
  MeasuredProfile,
  HouseholdSpec,
  Circuit,
  Appliance,
} from './scenario.ts';
import type { ReadScenario } from './read-scenario.ts';
import { resolveLadder } from './resolve-ladder.ts';
import { ScenarioError, type Finding } from './findings.ts';
import type { LocatedDocument } from './located-document.ts';
import type { CheckedScenario } from './schema.ts';
import { meantHint } from './nearest.ts';

/** What the files and tables hold that a scenario can name. */
export interface Lookups {
  /** Places of data/normals.csv by id. */
  readonly normals: ReadonlyMap<string, { readonly name: string; readonly monthly: MonthlyNormals }>;
  /** Weather years by the path written in the scenario. */
  readonly years: ReadonlyMap<string, WeatherYear>;
  /** Measured profiles by the path written in the scenario. */
  readonly profiles: ReadonlyMap<string, MeasuredProfile>;
}

/**
 * Puts what a scenario only names inside it: nothing is left to look up.
 *
 * @throws ScenarioError when a place is not in the table
 */
export function resolveScenario(read: ReadScenario, lookups: Lookups): Scenario {
  const { title, site, outage, prices, notes, weather, needs, unknowns, outageLengths } = read.scenario;
  const { windowDays, blockDays, snowCoverDays } = weather;
  return {
    title,
    site,
    outage,
    prices,
    notes,
    needs,
    outageLengths,
    unknowns,
    weather: { windowDays, blockDays, snowCoverDays, source: weatherSource(read, lookups) },
    ladder: read.ladder && resolveLadder(read.ladder, read.scenario, (s) => householdOf(s, lookups)),
    alternatives: read.alternatives.map((a) => ({
      id: a.id,
      title: a.title,
      household: householdOf(a.scenario, lookups),
    })),
  };
}

function weatherSource(read: ReadScenario, lookups: Lookups): WeatherSource {
  const { weather, site } = read.scenario;
  if (weather.monthly !== undefined)
    return { kind: 'normals', name: site.place || 'own monthly values', monthly: weather.monthly };
  if (weather.yearFile !== undefined) return { kind: 'year', year: lookups.years.get(weather.yearFile)! };
  const fault = unknownPlace(weather, read.document, lookups.normals);
  if (fault !== undefined) throw new ScenarioError([fault]);
  const { name, monthly } = lookups.normals.get(weather.normals!)!;
  return { kind: 'normals', name, monthly };
}

/** A finding where the weather is that of a place which the table does not have. */
export function unknownPlace(
  { normals }: Pick<CheckedScenario['weather'], 'normals'>,
  document: LocatedDocument,
  table: ReadonlyMap<string, unknown>,
): Finding | undefined {
  if (normals === undefined || table.has(normals)) return undefined;
  const places = [...table.keys()];
  return {
    file: document.file,
    line: document.lineOf(['weather', 'normals']),
    path: 'weather.normals',
    found: JSON.stringify(normals),
    expected: 'a place of data/normals.csv, or your own twelve numbers under weather.monthly',
    hint: meantHint(normals, places) ?? `There is: ${places.join(', ')}.`,
  };
}

function householdOf(scenario: CheckedScenario, lookups: Lookups): HouseholdSpec {
  const { units, pair, sources, usage, person, strategies } = scenario;
  return {
    units,
    pair,
    sources,
    usage,
    person,
    strategies,
    circuits: scenario.circuits.map((c) => resolveCircuit(c, lookups)),
  };
}

function resolveCircuit(circuit: CheckedScenario['circuits'][number], lookups: Lookups): Circuit {
  const appliances = circuit.appliances as readonly Appliance[]; // typical ones are filled in by now
  return {
    ...circuit,
    appliances: appliances.map((a) =>
      a.kind === 'measured' ? { ...a, profile: lookups.profiles.get(a.file)! } : a,
    ),
  };
}
