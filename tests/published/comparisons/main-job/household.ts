/** The households of the main job's checks, written as a scenario file would have them. */
import {
  prepareStudy,
  readScenario,
  resolveScenario,
  type ScenarioSpec,
  type Study,
} from '../../../../packages/sim/src/index.ts';
import { readDataFile } from '../../../../packages/sim/src/node/data-folder.ts';
import { readTypicalAppliances } from '../../../../packages/sim/src/usage/typical-appliances.ts';
import { readNormals } from '../../../../packages/sim/src/weather/normals-table.ts';

export type Unit = ScenarioSpec['units'][number];
export type Circuit = ScenarioSpec['circuits'][number];

const typical = readTypicalAppliances(readDataFile('appliances.csv'));
const normals = readNormals(readDataFile('normals.csv'));

/** Places of data/normals.csv from the north-west to the south-east, by their time zone. */
export const PLACES = {
  seattle: 'America/Los_Angeles',
  denver: 'America/Denver',
  phoenix: 'America/Phoenix',
  minneapolis: 'America/Chicago',
  chicago: 'America/Chicago',
  'new-orleans': 'America/Chicago',
  boston: 'America/New_York',
  miami: 'America/New_York',
} as const;
export type Place = keyof typeof PLACES;

export interface Written {
  readonly place: Place;
  readonly months: readonly number[];
  readonly days: number;
  readonly units: readonly Unit[];
  readonly circuits: readonly Circuit[];
  readonly strategies?: ScenarioSpec['strategies'];
  readonly alternatives?: ScenarioSpec['alternatives'];
  readonly seed?: string;
}

export function studyOf(written: Written): Study {
  const { place, months, days, units, circuits, strategies, alternatives = [], seed = 'main job' } = written;
  const { latitudeDeg, longitudeDeg, elevationM } = normals.get(place)!;
  const spec: ScenarioSpec = {
    rideout: 1,
    title: `a household near ${place}`,
    site: { latitudeDeg, longitudeDeg, elevationM, timeZone: PLACES[place] },
    weather: { normals: place },
    outage: { months: [...months], horizonDays: days },
    units: [...units],
    circuits: [...circuits],
    strategies: strategies ?? [{ id: 'all', title: 'Everything on' }],
    alternatives,
  };
  const read = readScenario(JSON.stringify(spec), `household near ${place}`, typical);
  return prepareStudy(resolveScenario(read, { normals, years: new Map(), profiles: new Map() }), { seed });
}

/** A 3 kW unit with one 3.2 kWh module, invented, of the class people pair for split-phase backup. */
export function unit3kW(
  id: string,
  leg: 'L1' | 'L2',
  changes: { solarW?: number; battery?: object; inverter?: object } = {},
): Unit {
  const { solarW, battery, inverter } = changes;
  return {
    id,
    leg,
    inverter: {
      continuousW: 3000,
      surgeW: 6000,
      overloadMinutes: 1,
      idleW: 28,
      lossPerW: 0.035,
      lossPerW2: 8e-6,
      standbyW: 4,
      ...inverter,
    },
    battery: { module: { capacityWh: 3200, maxChargeW: 1600, maxDischargeW: 3200 }, ...battery },
    ...(solarW === undefined
      ? {}
      : { solar: { inputLimitW: solarW, arrays: [{ peakW: solarW, tiltDeg: 35, azimuthDeg: 180 }] } }),
  };
}

export const pair3kW = (changes: Parameters<typeof unit3kW>[2] = {}): Unit[] => [
  unit3kW('one', 'L1', changes),
  unit3kW('two', 'L2', changes),
];

export function circuit(id: string, leg: Circuit['leg'], tier: number, ...appliances: object[]): Circuit {
  return { id, leg, tier, appliances: appliances as Circuit['appliances'] };
}

export const appliance = (id: string, changes: object = {}) => ({ typical: id, ...changes });

export const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1);
