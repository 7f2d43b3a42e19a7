/** A household back in the words of its file: the scenario that the page was published with, ready to be edited. */
import type { HouseholdSpec, MeasuredProfile, Scenario, ScenarioSpec, WeatherYear } from '@rideout/sim';
import { changesBetween } from './house-changes.ts';
import { ladderWritten } from './house-ladder.ts';
import { sameValue, schemaAt, wholeSchema, withoutDefaults, type PartSchema } from './house-schema.ts';
import type { HouseTables } from './house-tables.ts';

/** What a file names and does not hold, by the name written in it. */
export interface NamedFiles {
  readonly profiles: Map<string, MeasuredProfile>;
  /** A year that came with the page, or the text of a file given since: what it leaves out is taken from the site. */
  readonly years: Map<string, WeatherYear | string>;
}

export interface WrittenHouse {
  readonly spec: ScenarioSpec;
  readonly files: NamedFiles;
}

/** Reading what this writes gives the very same scenario: the same hash, the same draws. */
export function writtenHouse(scenario: Scenario, tables: HouseTables): WrittenHouse {
  const files: NamedFiles = { profiles: new Map(), years: new Map() };
  const households = scenario.alternatives.map(({ household }) => withFilesNamed(household, files));
  const { ladder, title, notes, site, outage, prices } = scenario;
  const described = ladder ? withFilesNamed(ladder.household, files) : households[0]!;
  const { units, pair, circuits, usage, person, strategies, ...rest } = described;
  const whole = {
    rideout: 1,
    ...{ title, notes, site },
    weather: weatherNamed(scenario, tables, files),
    ...{ outage, units, pair, circuits, usage, person, strategies },
    ...rest,
    alternatives: alternativesWritten(scenario, described, households),
    prices,
    ...(ladder ? { ladder: ladderWritten(ladder, valueWriter(tables)) } : {}),
    ...partsBeside(scenario),
  };
  return { spec: asWritten(whole, tables), files };
}

/** Whatever else the file says: the form has no fields for it, and keeps it. */
function partsBeside(scenario: Scenario): object {
  const told = ['title', 'notes', 'site', 'weather', 'outage', 'prices', 'ladder', 'alternatives'];
  return Object.fromEntries(Object.entries(scenario).filter(([key]) => !told.includes(key)));
}

/** Appliances of the table by name, usual values left out, nothing shared between two places. */
function asWritten(whole: { circuits: HouseholdSpec['circuits'] }, tables: HouseTables): ScenarioSpec {
  const schema = wholeSchema();
  const circuits = whole.circuits.map((circuit) => ({
    ...circuit,
    appliances: circuit.appliances.map((appliance) => byItsRow({ ...appliance }, tables, schema)),
  }));
  return JSON.parse(JSON.stringify(withoutDefaults({ ...whole, circuits }, schema))) as ScenarioSpec;
}

/** Appliances that a step puts in place are named by their rows too. */
function valueWriter(tables: HouseTables): (path: string, value: unknown) => unknown {
  const schema = wholeSchema();
  return (path, value) =>
    path.endsWith('.appliances') && Array.isArray(value)
      ? value.map((appliance: Record<string, unknown>) => byItsRow({ ...appliance }, tables, schema))
      : value;
}

/** `{ kind: 'thermostat', runningW: 130, … }` → `{ typical: 'refrigerator' }` and what differs from that row. */
function byItsRow(appliance: Record<string, unknown>, tables: HouseTables, schema: PartSchema): object {
  const rows = [...tables.typical];
  const [rowId, row] =
    rows.find(([id, r]) => id === appliance['id'] && r['kind'] === appliance['kind']) ??
    rows.find(([, r]) => r['title'] === appliance['title'] && r['kind'] === appliance['kind']) ??
    [];
  if (!row) return appliance;
  const taken = Object.keys(row).some((key) => appliance[key] === undefined);
  if (taken) return appliance; // a value of the row cannot be unsaid beside its name
  const kind = schemaAt(schema, { circuits: [{ appliances: [appliance] }] }, [
    'circuits',
    0,
    'appliances',
    0,
  ]);
  const own = Object.entries(appliance).filter(([key, value]) =>
    key === 'id'
      ? value !== rowId
      : key in row
        ? !sameValue(value, row[key])
        : !sameValue(value, kind.properties?.[key]?.default),
  );
  return { typical: rowId, ...Object.fromEntries(own) };
}

/** Measured records go into `files`; the household keeps their names. */
function withFilesNamed(household: HouseholdSpec, files: NamedFiles): HouseholdSpec {
  const circuits = household.circuits.map((circuit) => ({
    ...circuit,
    appliances: circuit.appliances.map((appliance) => {
      if (appliance.kind !== 'measured') return appliance;
      const { profile, ...named } = appliance;
      files.profiles.set(named.file, profile);
      return named as typeof appliance;
    }),
  }));
  return { ...household, circuits };
}

function weatherNamed({ weather }: Scenario, tables: HouseTables, files: NamedFiles): object {
  const { source, ...how } = weather;
  if (source.kind === 'year') {
    files.years.set(source.year.name, source.year);
    return { ...how, yearFile: source.year.name };
  }
  const place = [...tables.places.values()].find(
    ({ name, monthly }) => name === source.name && sameValue(monthly, source.monthly),
  );
  return place ? { ...how, normals: place.id } : { ...how, monthly: source.monthly };
}

/** Each by its changes to the household as described; that itself, called 'as-described', is there without being written. */
function alternativesWritten(
  { alternatives }: Scenario,
  described: HouseholdSpec,
  households: readonly HouseholdSpec[],
): object[] {
  return alternatives.flatMap(({ id, title }, i) => {
    const change = changesBetween(described, households[i]!);
    if (Object.keys(change).length > 0) return [{ id, title, change }];
    return i === 0 && id === 'as-described' ? [] : [{ id, title }];
  });
}
