/**
 * Minimal households in code: every loss, limit and scatter off unless a test turns it on, sunshine as the test says,
 * so that what a run must do can be worked out on paper.
 */
import { readScenario, resolveScenario, prepareStudy } from '../../../packages/sim/src/index.ts';
import type { Scenario, ScenarioSpec, Study } from '../../../packages/sim/src/index.ts';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { advance } from '../../../packages/sim/src/step/advance.ts';
import { writeOutcome } from '../../../packages/sim/src/step/outcome.ts';
import type { PreparedDraw, UnitSolar } from '../../../packages/sim/src/step/prepared-draw.ts';
import { startRun, type Run } from '../../../packages/sim/src/step/run.ts';
import { clipAndSumUp, createUnitSolar } from '../../../packages/sim/src/step/unit-solar.ts';
import { traceRun, type Trace } from '../../../packages/sim/src/step/trace.ts';
import { workspaceOf } from '../../../packages/sim/src/trials/shard.ts';
import { fillDraw } from '../../../packages/sim/src/trials/workspace.ts';

type Spec = ScenarioSpec;
type UnitInput = Spec['units'][number];
type CircuitInput = Spec['circuits'][number];
export type ApplianceInput = CircuitInput['appliances'][number];
export type RuleInput = NonNullable<Spec['strategies'][number]['rules']>[number];

/** One unit; capacity 6,000 Wh, everything ideal. */
export interface TinyUnit {
  readonly capacityWh?: number;
  readonly inverter?: Partial<UnitInput['inverter']>;
  readonly battery?: Partial<UnitInput['battery']>;
  readonly module?: Partial<UnitInput['battery']['module']>;
  readonly inputLimitW?: number;
  readonly charger?: UnitInput['charger'];
}

/** A circuit of tier 1 on L1 that wants `watts` all the time, or what `watts` says for each minute from midnight. */
export interface TinyCircuit {
  readonly watts?: number | ((minute: number) => number);
  /** Instead of plain watts. */
  readonly appliances?: CircuitInput['appliances'];
  readonly leg?: 'L1' | 'L2' | 'both';
  readonly tier?: number;
  readonly graceMinutes?: number;
  readonly need?: string;
}

export interface TinyHouse {
  /** One or two; called east (L1) and west (L2). */
  readonly units?: readonly TinyUnit[];
  readonly circuits: Readonly<Record<string, TinyCircuit>>;
  readonly rules?: readonly RuleInput[];
  readonly carriedOutBy?: 'person' | 'switch';
  readonly person?: Spec['person'];
  readonly pair?: Spec['pair'];
  readonly sources?: Spec['sources'];
  /** How the strategy runs the generator. */
  readonly generator?: Spec['strategies'][number]['generator'];
  readonly hours?: number;
  /** Local, in UTC. */
  readonly startLocal?: string;
  readonly timeZone?: string;
  readonly indoorC?: number;
  readonly elevationM?: number;
  /** Watts that a unit's panels give in a minute of the outage; none when left out. */
  readonly solarW?: (unit: number, minute: number) => number;
}

export const ALWAYS_AWAKE = '00:00-24:00';

/** The scenario file that the house stands for. */
export function tinySpec(house: TinyHouse): ScenarioSpec {
  const units = house.units ?? [{}];
  return {
    rideout: 1,
    title: 'A tiny house',
    site: {
      latitudeDeg: 40,
      longitudeDeg: 0,
      timeZone: house.timeZone ?? 'UTC',
      indoorC: house.indoorC ?? 21,
      elevationM: house.elevationM ?? 0,
      indoorFollowsFraction: 0,
    },
    weather: { monthly: { clearnessMean: twelve(0.5), dryBulbMeanC: twelve(15) } },
    outage: { startLocal: house.startLocal ?? '2026-03-10T00:00', horizonDays: (house.hours ?? 48) / 24 },
    units: units.map(unitInput),
    pair: house.pair,
    sources: house.sources,
    circuits: Object.entries(house.circuits).map(([id, circuit]) => circuitInput(id, circuit)),
    usage: { householdScatterFraction: 0 },
    person: { awake: ALWAYS_AWAKE, ...house.person },
    strategies: [
      {
        id: 'rules',
        title: 'The rules under test',
        carriedOutBy: house.carriedOutBy ?? 'switch',
        rules: [...(house.rules ?? [])],
        generator: house.generator,
      },
    ],
  };
}

const twelve = (value: number) => new Array<number>(12).fill(value);

function unitInput(unit: TinyUnit, u: number): UnitInput {
  const { capacityWh = 6000, inverter, battery, module, inputLimitW } = unit;
  return {
    id: u === 0 ? 'east' : 'west',
    leg: u === 0 ? 'L1' : 'L2',
    inverter: { continuousW: 50_000, surgeW: 100_000, idleW: 0, lossPerW: 0, ...inverter },
    battery: {
      cutOffFraction: 0,
      restartFraction: 0.1,
      startFraction: 1,
      coldCapacity: [
        [-20, 1],
        [25, 1],
      ],
      minChargeC: -40,
      ...battery,
      module: {
        capacityWh,
        maxChargeW: 50_000,
        maxDischargeW: 50_000,
        chargeEfficiency: 1,
        dischargeEfficiency: 1,
        selfDischargePerMonthFraction: 0,
        ...module,
      },
    },
    solar: {
      inputLimitW: inputLimitW ?? 100_000,
      arrays: [{ peakW: 1000, tiltDeg: 30, azimuthDeg: 180 }],
    },
    charger: unit.charger,
  };
}

function circuitInput(id: string, circuit: TinyCircuit): CircuitInput {
  const { watts = 0, appliances, ...rest } = circuit;
  const own: CircuitInput['appliances'][number] =
    typeof watts === 'number'
      ? { kind: 'steady', runningW: watts, dayScatterFraction: 0 }
      : { kind: 'measured', file: id, dayScatterFraction: 0 };
  return { id, leg: 'L1', tier: 1, ...rest, appliances: appliances ?? [own] };
}

/** Reads and resolves it as a file would be; minute-by-minute watts become measured profiles. */
export function tinyScenario(house: TinyHouse): Scenario {
  const minutes = Math.round((house.hours ?? 48) * 60) + 1440;
  const profiles = new Map(
    Object.entries(house.circuits).flatMap(([id, { watts }]) => {
      if (typeof watts !== 'function') return [];
      const profile = { intervalMinutes: 1, watts: Array.from({ length: minutes + 1 }, (_, m) => watts(m)) };
      return [[id, profile] as const];
    }),
  );
  const read = readScenario(JSON.stringify(tinySpec(house)), 'tiny-house.json', new Map());
  return resolveScenario(read, { normals: new Map(), years: new Map(), profiles });
}

export interface TinyDraw {
  readonly study: Study;
  readonly draw: PreparedDraw;
}

/** The one draw of the house, its sunshine replaced by the test's own. */
export function tinyDraw(house: TinyHouse): TinyDraw {
  const study = prepareStudy(tinyScenario(house), { seed: 'tiny' });
  const work = workspaceOf(study);
  fillDraw(study, work, streamsOf('tiny', 0));
  const units = study.compiled[0]!.household.units;
  const solar = units.map((_, u) =>
    sunshine(study.minutes, house.units?.[u]?.inputLimitW, (m) => house.solarW?.(u, m) ?? 0),
  );
  return { study, draw: { ...work.draws[0]!, solar } };
}

function sunshine(
  minutes: number,
  inputLimitW: number | undefined,
  wattsAt: (minute: number) => number,
): UnitSolar {
  const solar = createUnitSolar(minutes);
  for (let m = 0; m < minutes; m++) solar.usableW[m] = wattsAt(m);
  const allDay = { count: 1, from: Int32Array.of(0), to: Int32Array.of(minutes) };
  clipAndSumUp(solar, allDay, inputLimitW ?? 100_000);
  return solar;
}

export function startTinyRun({ study, draw }: TinyDraw): Run {
  const { household } = study.compiled[0]!;
  return startRun(household, draw, household.strategies[0]!);
}

/** The house lived through: its outcome row by column name, and its trace. */
export function live(house: TinyHouse): {
  readonly row: Readonly<Record<string, number>>;
  readonly trace: Trace;
} {
  const tiny = tinyDraw(house);
  const run = startTinyRun(tiny);
  advance(run, tiny.study.minutes);
  const row: Record<string, number> = {};
  writeOutcome(run, (column, value) => (row[column] = value));
  return { row, trace: traceRun(startTinyRun(tiny), tiny.study.minutes) };
}

export function sumOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum;
}

/** The minutes in which `holds` is true. */
export function minutesWhere(values: ArrayLike<unknown>, holds: (value: number) => boolean): number[] {
  return Array.from({ length: values.length }, (_, m) => m).filter((m) => holds(values[m] as number));
}
