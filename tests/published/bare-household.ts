/** Households reduced to what a formula knows: no scatter, no weather but the one asked for, losses only where given. */
import {
  prepareStudy,
  readScenario,
  resolveScenario,
  runShard,
  type MeasuredProfile,
  type OutcomeRows,
  type Scenario,
  type ScenarioSpec,
  type Study,
  type WeatherYear,
} from '../../packages/sim/src/index.ts';

export type UnitWritten = ScenarioSpec['units'][number];
export type CircuitWritten = ScenarioSpec['circuits'][number];

/** What a bare household takes from a caller; everything left out is loss-free and without limits that bite. */
export interface Bare {
  readonly units?: readonly UnitWritten[];
  readonly circuits: readonly CircuitWritten[];
  readonly days: number;
  readonly startLocal?: string;
  readonly person?: ScenarioSpec['person'];
  readonly pair?: ScenarioSpec['pair'];
  readonly weather?: Partial<ScenarioSpec['weather']>;
  readonly outage?: Partial<ScenarioSpec['outage']>;
  readonly alternatives?: ScenarioSpec['alternatives'];
  readonly profiles?: Readonly<Record<string, MeasuredProfile>>;
  /** Needed where there are panels. */
  readonly year?: WeatherYear;
  readonly seed?: string;
}

/** A unit that loses nothing and bears everything, but for what is given. */
export function bareUnit(given: {
  readonly id?: string;
  readonly leg?: 'L1' | 'L2';
  readonly capacityWh: number;
  readonly inverter?: Partial<UnitWritten['inverter']>;
  readonly battery?: Partial<UnitWritten['battery']>;
  readonly module?: Partial<UnitWritten['battery']['module']>;
  /** Most watts of sun the unit takes; its panels are far larger, so a bright hour gives exactly this. */
  readonly sunW?: number;
}): UnitWritten {
  const { id = 'unit', leg = 'L1', capacityWh, inverter, battery, module, sunW } = given;
  return {
    id,
    leg,
    inverter: { continuousW: 1e5, surgeW: 1e6, idleW: 0, lossPerW: 0, ...inverter },
    battery: {
      module: {
        capacityWh,
        maxChargeW: 1e6,
        maxDischargeW: 1e6,
        chargeEfficiency: 1,
        dischargeEfficiency: 1,
        selfDischargePerMonthFraction: 0,
        ...module,
      },
      startFraction: 1,
      cutOffFraction: 0,
      restartFraction: 0.001,
      coldCapacity: [
        [-20, 1],
        [25, 1],
      ],
      ...battery,
    },
    ...(sunW === undefined
      ? {}
      : { solar: { inputLimitW: sunW, arrays: [{ peakW: 1e6, tiltDeg: 0, azimuthDeg: 180 }] } }),
  };
}

/** A tier-1 circuit with one appliance of which nothing scatters. */
export function bareCircuit(
  id: string,
  leg: 'L1' | 'L2' | 'both',
  appliance: Readonly<Record<string, unknown>>,
): CircuitWritten {
  const still = { dayScatterFraction: 0, ...appliance };
  return { id, leg, tier: 1, appliances: [still as CircuitWritten['appliances'][number]] };
}

export const steady = (runningW: number) => ({ kind: 'steady', runningW });
export const during = (runningW: number, ...windows: string[]) => ({ kind: 'scheduled', runningW, windows });
/** Watts minute by minute from midnight, over and over. */
export const profile = (file: string) => ({ kind: 'measured', file });

/** On the equator at longitude 0: local noon is noon, and the sun is up from about six to six all year. */
const SITE = { latitudeDeg: 0, longitudeDeg: 0, timeZone: 'UTC', indoorC: 25, indoorFollowsFraction: 0 };

/** Hours of the day between which the sun shines, whole, 7 to 17 at most. */
export type SunHours = readonly [from: number, to: number];
export const NO_SUN: SunHours = [0, 0];
export const FOUR_HOURS: SunHours = [10, 14];

/** A weather year in which the sun shines only in the given hours of each day: enough to bring `sunW` of a bare unit. */
export function daysOfSun(hoursOf: (day: number) => SunHours): WeatherYear {
  const ghiWm2 = Array.from({ length: 8760 }, (_, h) => {
    const [from, to] = hoursOf(Math.floor(h / 24));
    return h % 24 >= from && h % 24 < to ? 100 : 0;
  });
  const constant = (value: number) => new Array<number>(8760).fill(value);
  return {
    name: 'made days',
    utcOffsetHours: 0,
    ghiWm2,
    dniWm2: ghiWm2.map((g) => g / 2),
    dhiWm2: ghiWm2.map((g) => g / 2),
    dryBulbC: constant(25),
    windMs: constant(3),
  };
}

/** Any weather will do for a household without panels; monthly values are the quickest to prepare. */
const UNSEEN = {
  clearnessMean: new Array<number>(12).fill(0.5),
  dryBulbMeanC: new Array<number>(12).fill(25),
};

export function bareScenario(bare: Bare): Scenario {
  const { units = [], days, startLocal = '2026-03-01T00:00', profiles = {}, year } = bare;
  const written: ScenarioSpec = {
    rideout: 1,
    title: 'a bare household',
    site: SITE,
    // unless told otherwise, exactly the year's own days, in order
    weather: year === undefined ? { monthly: UNSEEN } : { yearFile: 'year', windowDays: 0, ...bare.weather },
    outage: { startLocal, horizonDays: days, ...bare.outage },
    units: [...units],
    pair: bare.pair ?? {},
    circuits: [...bare.circuits],
    usage: { householdScatterFraction: 0 },
    person: bare.person ?? {},
    strategies: [{ id: 'all', title: 'Everything on' }],
    alternatives: bare.alternatives ?? [],
  };
  const read = readScenario(JSON.stringify(written), 'bare household', new Map());
  return resolveScenario(read, {
    normals: new Map(),
    years: new Map(year === undefined ? [] : [['year', year]]),
    profiles: new Map(Object.entries(profiles)),
  });
}

export function bareStudy(bare: Bare): Study {
  return prepareStudy(bareScenario(bare), { seed: bare.seed ?? 'bare' });
}

/** The one row of a household in which nothing is left to chance. */
export function onlyRow(study: Study): (column: string) => number {
  return rowReader(runShard(study, 0, 1), 0);
}

export function rowReader(rows: OutcomeRows, row: number): (column: string) => number {
  return (column) => {
    const value = rows.columns[column]?.[row];
    if (value === undefined) throw new RangeError(`no ${column} in row ${row}`);
    return value;
  };
}
