/** Random households that a scenario file could hold, sound but often hostile: tiny banks, huge idle losses, deep cold. */
import fc from 'fast-check';
import { readScenario, resolveScenario } from '../../packages/sim/src/index.ts';
import type { MeasuredProfile, Scenario, ScenarioSpec } from '../../packages/sim/src/index.ts';

type Unit = ScenarioSpec['units'][number];
type Circuit = ScenarioSpec['circuits'][number];
type Appliance = Circuit['appliances'][number];
type Strategy = ScenarioSpec['strategies'][number];
type Rule = NonNullable<Strategy['rules']>[number];
type Gen = fc.GeneratorValue;

export interface RandomScenarioOptions {
  readonly horizonHours?: readonly [number, number];
  /** Ratings so large and limits so wide that no unit can trip. */
  readonly neverTrips?: boolean;
  /** Only these kinds of rule; none when empty, all when left out. */
  readonly rules?: readonly Rule['by'][];
  readonly carriedOutBy?: 'person' | 'switch';
  readonly units?: 1 | 2;
  /** Most of them with a generator, hours of grid or a vehicle; none when left out. */
  readonly sources?: boolean;
}

/** A scenario as it would be written; `resolve` makes it ready to run. */
export function randomSpec(options: RandomScenarioOptions = {}): fc.Arbitrary<ScenarioSpec> {
  return fc.gen().map((g) => buildSpec(g, options));
}

export function randomScenario(options: RandomScenarioOptions = {}): fc.Arbitrary<Scenario> {
  return randomSpec(options).map(resolve);
}

/** One profile of half-hours, with hours of nothing in it. */
const PROFILE: MeasuredProfile = {
  intervalMinutes: 30,
  watts: Array.from({ length: 48 }, (_, k) => (k % 7 < 3 ? 0 : 40 * (k % 11))),
};

export function resolve(spec: ScenarioSpec): Scenario {
  const read = readScenario(JSON.stringify(spec), 'random.json', new Map());
  const profiles = new Map([['profile.csv', PROFILE]]);
  return resolveScenario(read, { normals: new Map(), years: new Map(), profiles });
}

const pick = <T>(g: Gen, ...values: readonly T[]): T => g(fc.constantFrom, ...values) as T;
const whole = (g: Gen, min: number, max: number) => g(fc.integer, { min, max });
/** A number with few digits, so that failures can be read. */
const number = (g: Gen, min: number, max: number) => min + (whole(g, 0, 1000) / 1000) * (max - min);
const chance = (g: Gen, percent: number) => whole(g, 1, 100) <= percent;

function buildSpec(g: Gen, options: RandomScenarioOptions): ScenarioSpec {
  const units = Array.from({ length: options.units ?? whole(g, 1, 2) }, (_, u) => buildUnit(g, u, options));
  const legs: Circuit['leg'][] = units.length === 2 ? ['L1', 'L2', 'both'] : ['L1'];
  const circuits = Array.from({ length: whole(g, 1, 7) }, (_, c) => buildCircuit(g, c, legs));
  const [least, most] = options.horizonHours ?? [3, 50];
  const sources = options.sources === true ? buildSources(g, units) : undefined;
  const fixed = chance(g, 50);
  const climate = number(g, -20, 30);
  return {
    rideout: 1,
    title: 'A random household',
    site: {
      latitudeDeg: number(g, -60, 65),
      longitudeDeg: number(g, -179, 179),
      timeZone: pick(g, 'America/New_York', 'UTC', 'Australia/Sydney', 'Asia/Kathmandu', 'America/Phoenix'),
      indoorC: number(g, -5, 35),
      indoorFollowsFraction: number(g, 0, 1),
    },
    weather: {
      monthly: {
        clearnessMean: new Array<number>(12).fill(number(g, 0.2, 0.75)),
        dryBulbMeanC: Array.from({ length: 12 }, (_, m) => climate + (m > 3 && m < 10 ? 8 : -8)),
      },
      ...(chance(g, 20)
        ? { snowCoverDays: { perMonth: new Array<number>(12).fill(10), untilCleared: chance(g, 50) } }
        : {}),
    },
    outage: {
      ...(fixed
        ? {
            startLocal: pick(
              g,
              '2026-03-07T20:15',
              '2026-10-31T21:40',
              '2026-01-15T02:30',
              '2026-07-01T12:00',
              '2026-12-31T23:59',
            ),
          }
        : { months: [whole(g, 1, 12)] }),
      horizonDays: whole(g, least * 60, most * 60) / 1440,
      stormLed: chance(g, 30),
    },
    units,
    pair: { stopsTogether: chance(g, 40) },
    ...(sources === undefined ? {} : { sources }),
    circuits,
    usage: { householdScatterFraction: pick(g, 0, 0.15, 0.5) },
    person: {
      awake: pick(g, '06:30-22:30', '00:00-24:00', '22:00-06:00', '12:00-12:10'),
      looksEveryMinutes: pick(g, 1, 7, 60, 240, 1440),
      tripReactionMinutes: pick(g, 0, 10, 300),
      afterTripShedTiers: whole(g, 0, 4),
      afterTripHoldMinutes: pick(g, 0, 7, 60, 600),
    },
    strategies: Array.from({ length: whole(g, 1, 2) }, (_, s) =>
      buildStrategy(g, s, circuits, units, options),
    ),
  };
}

function buildUnit(g: Gen, u: number, { neverTrips = false, sources }: RandomScenarioOptions): Unit {
  const continuousW = neverTrips ? 100_000 : number(g, 300, 6000);
  const cutOffFraction = pick(g, 0, 0.1, 0.3);
  return {
    id: u === 0 ? 'east' : 'west',
    leg: u === 0 ? 'L1' : 'L2',
    inverter: {
      continuousW,
      surgeW: neverTrips ? 1_000_000 : continuousW * number(g, 1, 3),
      overloadMinutes: pick(g, 0, 1, 5),
      idleW: pick(g, 0, 20, 35, 400),
      lossPerW: number(g, 0, 0.1),
      lossPerW2: pick(g, 0, 8e-6, 1e-4),
      standbyW: pick(g, 0, 4, 60),
      ...(chance(g, 40) ? { resetsItselfAfterMinutes: pick(g, 1, 5, 90), resetTries: whole(g, 1, 3) } : {}),
    },
    battery: {
      modules: whole(g, 1, 3),
      module: {
        capacityWh: pick(g, 50, 800, 3200, 9000),
        maxChargeW: pick(g, 30, 1500, 100_000),
        maxDischargeW: neverTrips ? 1_000_000 : pick(g, 600, 3000, 100_000),
        chargeEfficiency: pick(g, 1, 0.97, 0.6),
        dischargeEfficiency: pick(g, 1, 0.97, 0.6),
        selfDischargePerMonthFraction: pick(g, 0, 0.03, 1),
      },
      healthFraction: pick(g, 1, 0.9, 0.35),
      ...(chance(g, 50)
        ? { startFraction: pick(g, 1, 0.7, cutOffFraction) }
        : { reserveFraction: Math.max(cutOffFraction, number(g, 0, 1)) }),
      cutOffFraction,
      restartFraction: cutOffFraction + pick(g, 0.01, 0.1, 0.5),
      place: pick(g, 'indoors', 'garage', 'outdoors'),
      minChargeC: pick(g, 0, 5, -20),
    },
    ...(chance(g, 75) ? { solar: buildSolar(g) } : {}),
    ...(sources === true
      ? { charger: { maxW: pick(g, 40, 900, 50_000), efficiency: pick(g, 1, 0.93, 0.5) } }
      : {}),
  };
}

function buildSolar(g: Gen): NonNullable<Unit['solar']> {
  return {
    inputLimitW: pick(g, 150, 1600, 20_000),
    arrays: Array.from({ length: whole(g, 1, 2) }, () => ({
      peakW: pick(g, 200, 1600, 15_000),
      tiltDeg: pick(g, 0, 35, 90),
      azimuthDeg: pick(g, 0, 170, 270),
    })),
  };
}

type Sources = NonNullable<ScenarioSpec['sources']>;

/** Sound but hostile: thimbles for tanks, breakers that open at every start, grids that come for a minute. */
function buildSources(g: Gen, units: readonly Unit[]): Sources {
  const ratedW = pick(g, 300, 2500, 40_000);
  const hand = chance(g, 50);
  return {
    // where a strategy runs one there must be one
    generator: {
      ratedW,
      surgeW: ratedW * pick(g, 1, 2),
      volts: pick(g, 120, 240),
      ...(chance(g, 30) ? { feeds: [pick(g, ...units).id] } : {}),
      passesThrough: chance(g, 75),
      fuel: pick(g, 'gasoline', 'diesel', 'propane'),
      tankL: pick(g, 0.2, 3, 60),
      cansL: pick(g, 0, 0.5, 40),
      refuelMinutes: pick(g, 0, 7, 90),
      starts: hand ? 'hand' : 'automatic',
      ...(chance(g, 40) ? { quietHours: [pick(g, '13:00-14:30', '02:11-02:12')] } : {}),
      run: buildGeneratorRun(g),
      maintenance: { everyHours: pick(g, 1, 5.5, 100), minutes: pick(g, 0, 45) },
    },
    ...(chance(g, 35)
      ? {
          grid: {
            onHours: pick(g, 0.02, 1, 5),
            offHours: pick(g, 0.3, 4),
            onScatterFraction: pick(g, 0, 0.6),
            ...(chance(g, 40) ? { firstOffHours: pick(g, 0.5, 8) } : {}),
          },
        }
      : {}),
    ...(chance(g, 35)
      ? {
          vehicle: {
            unit: pick(g, ...units).id,
            outletW: pick(g, 50, 1500),
            ...(chance(g, 50) ? { during: [pick(g, '08:00-19:00', '22:00-03:00')] } : {}),
            ...(chance(g, 50) ? { mostWhPerDay: pick(g, 30, 2000) } : {}),
          },
        }
      : {}),
  };
}

function buildGeneratorRun(g: Gen): NonNullable<NonNullable<Sources['generator']>['run']> {
  if (chance(g, 30)) return { by: 'hours', hoursPerDay: pick(g, 0.02, 0.1) };
  const startBelowFraction = pick(g, 0, 0.35, 0.9);
  return {
    by: 'charge',
    startBelowFraction,
    stopAboveFraction: startBelowFraction + pick(g, 0.001, 0.1),
    ...(chance(g, 30) ? { mostHoursPerDay: pick(g, 0.7, 6) } : {}),
  };
}

function buildCircuit(g: Gen, c: number, legs: readonly Circuit['leg'][]): Circuit {
  return {
    id: `circuit-${c}`,
    leg: pick(g, ...legs),
    tier: c === 0 ? 1 : whole(g, 1, 5), // days end by a circuit of tier 1
    graceMinutes: pick(g, 0, 15, 240),
    ...(chance(g, 50) ? { need: pick(g, 'food', 'talk') } : {}),
    appliances: Array.from({ length: whole(g, 1, 3) }, (_, a) => buildAppliance(g, a)),
  };
}

function buildAppliance(g: Gen, a: number): Appliance {
  const runningW = pick(g, 3, 60, 150, 1200);
  const about = { id: `appliance-${a}`, count: pick(g, 1, 1, 2), dayScatterFraction: pick(g, 0, 0.1, 0.6) };
  const starting = chance(g, 50) ? { startingW: runningW * pick(g, 1, 2, 6) } : {};
  switch (whole(g, 0, 6)) {
    case 0:
      return { kind: 'steady', ...about, runningW };
    case 1:
      return {
        kind: 'duty-cycled',
        ...about,
        runningW,
        ...starting,
        onMinutes: pick(g, 0.5, 8, 25.5),
        dutyFraction: pick(g, 0.1, 0.4, 1),
      };
    case 2:
      return {
        kind: 'events',
        ...about,
        runningW,
        ...starting,
        usesPerDay: pick(g, 0, 2, 30),
        minutesPerUse: pick(g, 0.3, 5, 40),
      };
    case 3:
      return {
        kind: 'scheduled',
        ...about,
        runningW,
        ...starting,
        windows: [pick(g, '23:30-01:15', '07:00-07:01', '00:00-24:00')],
      };
    case 4:
      return { kind: 'lights', ...about, runningW };
    case 5:
      return { kind: 'measured', ...about, file: 'profile.csv' };
    default:
      return buildThermostat(g, { ...about, runningW, ...starting });
  }
}

function buildThermostat(g: Gen, about: { id: string; runningW: number }): Appliance {
  const common = {
    kind: 'thermostat' as const,
    ...about,
    bandC: pick(g, 0.5, 1.5),
    timeConstantHours: pick(g, 6, 40),
  };
  const surroundings = pick(g, 'indoors' as const, 'garage' as const, 'outdoors' as const);
  return chance(g, 70)
    ? {
        ...common,
        surroundings,
        does: 'cools',
        setC: 3,
        dutySurroundingsC: 21,
        dutyFraction: pick(g, 0.15, 0.5),
        limitC: pick(g, 5, 9),
      }
    : {
        ...common,
        surroundings,
        does: 'heats',
        setC: 19,
        dutySurroundingsC: 0,
        dutyFraction: pick(g, 0.2, 0.8),
      };
}

function buildStrategy(
  g: Gen,
  s: number,
  circuits: readonly Circuit[],
  units: readonly Unit[],
  options: RandomScenarioOptions,
): Strategy {
  return {
    id: `strategy-${s}`,
    title: `Strategy ${s}`,
    carriedOutBy: options.carriedOutBy ?? pick(g, 'person', 'switch'),
    ...(options.sources === true && chance(g, 30)
      ? { generator: chance(g, 30) ? { by: 'never' as const } : buildGeneratorRun(g) }
      : {}),
    rules: Array.from({ length: options.rules?.length === 0 ? 0 : whole(g, 0, 4) }, () =>
      buildRule(g, circuits, units, options),
    ),
  };
}

const ALL_RULES: readonly Rule['by'][] = ['charge', 'clock', 'sun', 'ration', 'outage', 'sleep'];

function buildRule(
  g: Gen,
  circuits: readonly Circuit[],
  units: readonly Unit[],
  options: RandomScenarioOptions,
): Rule {
  const allowed = (options.rules ?? ALL_RULES).filter((by) => by !== 'sleep' || units.length === 2);
  const chosen = pick(g, ...circuits);
  const choice = chance(g, 50)
    ? { ids: [chosen.id] }
    : chance(g, 50)
      ? { tiers: [chosen.tier] }
      : { legs: [chosen.leg] };
  const level = number(g, 0.05, 0.9);
  const windows = [
    pick(g, '22:00-02:30', '07:00-08:00', '01:30-02:30'),
    pick(g, '12:01-12:02', '18:00-24:00'),
  ];
  switch (pick(g, ...allowed)) {
    case 'charge':
      return {
        by: 'charge',
        circuits: choice,
        dropBelowFraction: level,
        restoreAboveFraction: Math.min(1, level + pick(g, 0.001, 0.1)),
        reads: pick(g, 'lowest', 'own'),
      };
    case 'clock':
      return { by: 'clock', circuits: choice, onDuring: windows };
    case 'sun':
      return { by: 'sun', circuits: choice, solarAboveW: pick(g, 1, 300) };
    case 'ration':
      return {
        by: 'ration',
        circuits: choice,
        onMinutesPerHour: pick(g, 1, 20, 59),
        whileAsleep: pick(g, 'on', 'off'),
      };
    case 'outage':
      return { by: 'outage', circuits: choice };
    case 'sleep':
      return {
        by: 'sleep',
        unit: pick(g, ...units).id,
        circuits: pick(g, 'moved', 'dropped'),
        ...(chance(g, 50)
          ? { during: windows }
          : { sleepBelowFraction: level, wakeAboveFraction: level + 0.05 }),
      };
  }
}
