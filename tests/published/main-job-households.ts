/** The households of the main job's checks, written as a scenario file would have them. */
import { prepareStudy, readScenario, resolveScenario, type ScenarioSpec, type Study } from '../../packages/sim/src/index.ts';
import { readDataFile } from '../../packages/sim/src/node/data-folder.ts';
import { readTypicalAppliances } from '../../packages/sim/src/usage/typical-appliances.ts';
import { readNormals } from '../../packages/sim/src/weather/normals-table.ts';

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
export function unit3kW(id: string, leg: 'L1' | 'L2', changes: { solarW?: number; battery?: object; inverter?: object } = {}): Unit {
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

/* ---- the household of the backup study of Lawrence Berkeley National Laboratory, as near as its text describes it ---- */

/**
 * Half of a solar-plus-storage system on one leg: 5 kWh or three times that, 5 kW, full when the grid goes, all of it
 * usable. The published system is one unit of 10 or 30 kWh; ours is a pair, because that is the household at hand.
 */
function backupUnit(id: string, leg: 'L1' | 'L2', solarW: number): Unit {
  return {
    ...unit3kW(id, leg, { solarW }),
    inverter: { continuousW: 5000, surgeW: 10_000, overloadMinutes: 5, idleW: 25, lossPerW: 0.035 },
    battery: {
      module: { capacityWh: 5000, maxChargeW: 2500, maxDischargeW: 5000 },
      startFraction: 1,
      cutOffFraction: 0,
      restartFraction: 0.05,
    },
  };
}

/** Refrigeration as EIA RECS 2001 has it (1,462 kWh a year), lighting, internet, a well pump: 5 to 6 kWh a day. */
export const LIMITED_CRITICAL: readonly Circuit[] = [
  circuit('fridge', 'L1', 1, appliance('refrigerator-old')),
  circuit('lights', 'L2', 1, appliance('lights-led', { count: 3 })),
  circuit('talk', 'L2', 1, appliance('modem-router')),
  circuit('well', 'both', 1, appliance('well-pump-half-hp')),
];

/** A house that needs three quarters of 6 kW of heat at -10 °C; a heat pump brings the same for a third of the watts. */
const heating = (runningW: number) => ({
  kind: 'thermostat',
  does: 'heats',
  runningW,
  setC: 20,
  bandC: 0.5,
  surroundings: 'outdoors',
  surroundingsOffsetC: 3,
  timeConstantHours: 20,
  dutyFraction: 0.75,
  dutySurroundingsC: -10,
});

export const WITH_RESISTANCE_HEAT = [...LIMITED_CRITICAL, circuit('heat', 'both', 1, heating(6000))];
export const WITH_HEAT_PUMP = [...LIMITED_CRITICAL, circuit('heat', 'both', 1, heating(2000))];
export const WITH_COOLING = [
  ...LIMITED_CRITICAL,
  circuit('cool', 'L1', 1, appliance('room-air-conditioner-12000')),
  circuit('cool-too', 'L2', 1, appliance('room-air-conditioner-12000')),
];

/** Three days from a random minute of the month, with 10 kWh and with 30. */
export function backupStudy(place: Place, month: number, circuits: readonly Circuit[], solarW: number): Study {
  return studyOf({
    place,
    months: [month],
    days: 3,
    units: [backupUnit('one', 'L1', solarW / 2), backupUnit('two', 'L2', solarW / 2)],
    circuits,
    alternatives: [
      { id: 'ten', title: '10 kWh' },
      { id: 'thirty', title: '30 kWh', change: { 'units.*.battery.modules': 3 } },
    ],
  });
}

/* ---- an ordinary home ---- */

/** Everything an ordinary home runs but central heating: tier 1 essentials, tiers 2 and 3 the day, tier 4 the heavy things. */
export const ORDINARY_HOME: readonly Circuit[] = [
  circuit('fridge', 'L1', 1, appliance('refrigerator')),
  circuit('talk', 'L2', 1, appliance('modem-router'), appliance('phone-charging', { count: 3 })),
  circuit('lights', 'L1', 1, appliance('lights-led')),
  circuit('furnace', 'L2', 1, appliance('furnace-blower-ecm')),
  circuit('freezer', 'L1', 2, appliance('freezer-chest')),
  circuit('more-lights', 'L2', 2, appliance('lights-led', { count: 2 })),
  circuit('kitchen', 'L1', 3, ...['microwave', 'kettle', 'coffee-maker', 'toaster'].map((id) => appliance(id))),
  circuit(
    'living',
    'L2',
    3,
    appliance('television', { count: 2 }),
    appliance('laptop', { count: 2 }),
    appliance('desktop-computer'),
  ),
  circuit('dishwasher', 'L1', 3, appliance('dishwasher')),
  circuit('washer', 'L2', 3, appliance('clothes-washer')),
  circuit('small-things', 'L2', 3, { kind: 'steady', runningW: 60 }),
  circuit('bathroom', 'L1', 3, appliance('hair-dryer')),
  circuit('water-heater', 'both', 4, appliance('water-heater')),
  circuit('range', 'both', 4, appliance('range-top'), appliance('oven')),
  circuit('dryer', 'both', 4, appliance('dryer-electric')),
  circuit('cool', 'L2', 4, appliance('room-air-conditioner-12000')),
  circuit('cool-too', 'L1', 4, appliance('room-air-conditioner-8000')),
];

/** A pair that no load of an ordinary home trips, so that energy alone decides. */
export const strongPair = (bankWh: number): Unit[] =>
  (['L1', 'L2'] as const).map((leg) => ({
    ...unit3kW(leg.toLowerCase(), leg),
    inverter: { continuousW: 10_000, surgeW: 30_000, overloadMinutes: 5, idleW: 28, lossPerW: 0.035 },
    battery: {
      module: { capacityWh: bankWh, maxChargeW: 5000, maxDischargeW: 20_000 },
      startFraction: 1,
      cutOffFraction: 0,
      restartFraction: 0.05,
    },
  }));
