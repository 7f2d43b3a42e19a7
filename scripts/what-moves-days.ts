/**
 * Works out the table of MODEL.md §16 anew: the demo household with two modules on each unit, one thing changed at a time.
 * Run: npx tsx --conditions=rideout-source scripts/what-moves-days.ts [draws] [seed]
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import {
  readNormals,
  readScenario,
  readTypicalAppliances,
  readWeatherYear,
  resolveScenario,
  scenarioHash,
  summarise,
  type Estimate,
  type Scenario,
} from '@rideout/sim';
import { loadScenario, runStudy } from '@rideout/sim/node';
import { changeAt } from '../packages/sim/src/scenario/household-parts.ts';
import { weatherYearFile, withoutWeatherYear } from '../tests/weather-years.ts';

type Changes = Readonly<Record<string, unknown>>;

const DEMO = fileURLToPath(new URL('../data/full-house.yaml', import.meta.url));
const TMY3 = 'boston-725090-tmy3.csv';
const STRATEGIES = ['tiers-by-hand', 'frugal'];
/** Of the table of typical appliances. */
const REFRIGERATOR_DUTY = 0.42;

const CHANGES: Readonly<Record<string, Changes>> = {
  'as described': {},
  'not storm-led': { 'outage.stormLed': false },
  'typical year (TMY3) instead of normals': { weather: { yearFile: TMY3 } },
  'the same, not storm-led': { weather: { yearFile: TMY3 }, 'outage.stormLed': false },
  'idle draw 18 W instead of 28 W each': { 'units.*.inverter.idleW': 18 },
  'idle draw 38 W': { 'units.*.inverter.idleW': 38 },
  'banks indoors instead of in the garage': { 'units.*.battery.place': 'indoors' },
  'cold capacity, low end of the ranges': { 'units.*.battery.coldCapacity': cold(0.5, 0.7, 0.8) },
  'cold capacity, high end': { 'units.*.battery.coldCapacity': cold(0.65, 0.8, 0.9) },
  'health 0.90 instead of 0.95': { 'units.*.battery.healthFraction': 0.9 },
  'one-way efficiencies 0.95 instead of 0.97': {
    'units.*.battery.module.chargeEfficiency': 0.95,
    'units.*.battery.module.dischargeEfficiency': 0.95,
  },
  'panel losses 0.20 instead of 0.14': { 'units.*.solar.arrays.*.lossFraction': 0.2 },
  'refrigerator’s duty 15 % higher': {
    'circuits.fridge.appliances': [{ typical: 'refrigerator', dutyFraction: 1.15 * REFRIGERATOR_DUTY }],
  },
  'rooms do not follow the outdoors': { 'site.indoorFollowsFraction': 0 },
  'rooms follow by 0.6 instead of 0.3': { 'site.indoorFollowsFraction': 0.6 },
  'looks every 3 hours instead of every hour': { 'person.looksEveryMinutes': 180 },
  'household scatter 0': { 'usage.householdScatterFraction': 0 },
  'household scatter 0.3 instead of 0.15': { 'usage.householdScatterFraction': 0.3 },
  'self-discharge 5 % a month instead of 3 %': {
    'units.*.battery.module.selfDischargePerMonthFraction': 0.05,
  },
  'wind 1 m/s instead of 3': { 'site.windMs': 1 },
};

const draws = Number(process.argv[2] ?? 2000);
const seed = process.argv[3] ?? 'rideout';
const { scenario: demo } = loadScenario(DEMO);
console.log(
  `scenario ${scenarioHash(demo)}, seed ${seed}, ${draws} draws; days that nine outages in ten reach\n`,
);
console.log('| changed | tiers dropped by hand | frugal |\n|---|---|---|');
for (const [changed, changes] of Object.entries(CHANGES)) {
  const usesYear = 'weather' in changes;
  if (usesYear && weatherYearFile(TMY3) === undefined) {
    console.log(`| ${changed} | ${withoutWeatherYear(TMY3)} | |`);
    continue;
  }
  const { study, rows } = await runStudy(changedDemo(changes), { seed, draws, workers: 2 });
  const days = summarise(study, rows).strategies.map(({ nineInTenDays }) => inWords(nineInTenDays));
  console.log(`| ${changed} | ${days.join(' | ')} |`);
}

/** Shares of the capacity at −20, −10 and 0 °C; the middles are the schema's. */
function cold(at20: number, at10: number, at0: number): [number, number][] {
  return [
    [-20, at20],
    [-10, at10],
    [0, at0],
    [25, 1],
  ];
}

/** The demo with two modules on each unit, under two of its strategies, changed. */
function changedDemo(changes: Changes): Scenario {
  const { rideout, title, site, weather, outage, units, pair, circuits, person, strategies } = plainDemo();
  const household: Record<string, unknown> = {
    rideout,
    title,
    site,
    weather,
    outage,
    units,
    pair,
    circuits,
    person,
    strategies: (strategies as { id: string }[]).filter(({ id }) => STRATEGIES.includes(id)),
  };
  changeAt(household, 'units.*.battery.modules', () => 2);
  for (const [path, value] of Object.entries(changes)) changeAt(household, path, () => value);
  const typical = readTypicalAppliances(dataFile('appliances.csv'));
  const read = readScenario(JSON.stringify(household), 'full-house.yaml', typical);
  const file = weatherYearFile(TMY3);
  const years =
    file === undefined ? [] : [[TMY3, readWeatherYear(readFileSync(file, 'utf8'), TMY3).year] as const];
  return resolveScenario(read, {
    normals: readNormals(dataFile('normals.csv')),
    years: new Map(years),
    profiles: new Map(),
  });
}

/** As written, with nothing shared between its parts. */
function plainDemo(): Record<string, unknown> {
  return JSON.parse(JSON.stringify(parse(readFileSync(DEMO, 'utf8'), { merge: true }))) as Record<
    string,
    unknown
  >;
}

function dataFile(name: string): string {
  return readFileSync(new URL(`../data/${name}`, import.meta.url), 'utf8');
}

function inWords({ value, low, high }: Estimate): string {
  const words = (days: number | null): string => (days === null ? '≥ 14' : days.toFixed(2));
  return `${words(value)} (${words(low)}–${words(high)})`;
}
