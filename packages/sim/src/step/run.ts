/** The state of one run: one draw lived through under one strategy. */
import { startControl, type ControlPlan, type ControlState, type Readings } from '../shedding/control.ts';
import { SETTINGS, SET_DT, STORED_WMIN, UNIT_STATE } from '../power/step-unit.ts';
import type { Household } from './household.ts';
import type { PreparedDraw } from './prepared-draw.ts';
import { startThermostat } from './step-thermostat.ts';
import { THERMOSTAT_PARAMETERS, THERMOSTAT_STATE } from './thermostat-layout.ts';

/** What a unit is doing. Everything from EMPTY on counts as down. */
export const ON = 0;
export const ASLEEP = 1;
export const EMPTY_BANK = 2;
export const TRIPPED = 3;
export const PARTNER_STOPPED = 4;

/** Longest stretch stepped at once. */
export const BLOCK_MINUTES = 60;
const NEVER = Infinity;

/** One unit of a run. */
export interface UnitRun {
  readonly parameters: Float64Array;
  /** See power/step-unit.ts; `saved` is its copy from before the present block. */
  readonly state: Float64Array;
  readonly saved: Float64Array;
  readonly settings: Float64Array;
  /** The present block's loads, W, and largest extra watts of a start; beside them the settings' base watts. */
  readonly loadW: Float32Array;
  readonly startExtraW: Float32Array;
  /** Per group, share of its watts that this unit carries now. */
  readonly shares: Float64Array;
  /** Most watts, and most extra watts of one start, that thermostats could ask of it now. */
  thermostatW: number;
  thermostatStartW: number;
  /** Delivered to circuits in the stretches closed so far. */
  servedWmin: number;
  readonly event: Int32Array;
  /** Steps that the last call got through, and how it ended: see power/step-unit.ts. */
  steps: number;
  ended: number;
  mode: number;
  /** Position in END_CAUSES of why it is down. */
  cause: number;
  /** Minute at which it is brought back after a trip. */
  resetAt: number;
  /** The reset is a person's doing. */
  resetByPerson: boolean;
  triesLeft: number;
  onSince: number;
  downSince: number;
  downMinutes: number;
}

/** Who feeds a group: nobody, unit 0, unit 1, or both (240 V). */
export const NOBODY = -1;
export const BOTH_UNITS = 2;

/** One group of circuits of a run. */
export interface GroupRun {
  on: boolean;
  /** NOBODY, 0, 1 or BOTH_UNITS. */
  feeder: number;
  /** When its feeder last changed. */
  since: number;
  onMinutes: number;
  servedWmin: number;
  /** Why it is off: position in END_CAUSES, and the unit, or -1. */
  offCause: number;
  offUnit: number;
}

/** When tier 1 first went without for longer than its grace, which circuit, and why. */
export interface RunEnd {
  minute: number;
  cause: number;
  unit: number;
  circuit: number;
}

export interface Run {
  readonly household: Household;
  readonly draw: PreparedDraw;
  readonly plan: ControlPlan;
  readonly control: ControlState;
  readonly readings: Readings;
  /** Scratch: what was allowed before a thought. */
  readonly allowedBefore: Uint8Array;
  readonly units: readonly UnitRun[];
  readonly groups: readonly GroupRun[];
  readonly thermostats: Float64Array;
  /** Their copy from before the present block, of those that the block touches. */
  readonly thermostatsSaved: Float64Array;
  readonly thermostatTouched: Uint8Array;
  /** Shares of each thermostat's watts carried by unit 0 and unit 1: two values each. */
  readonly thermostatFeeds: Float64Array;
  /** Run minutes of each thermostat that are in the units' `servedWmin`. */
  readonly thermostatCounted: Float64Array;
  /** Per need, first minute unmet (Infinity = never); per circuit, minutes wanted beyond its grace without power. */
  readonly needFirst: Float64Array;
  readonly unmetMinutes: Float64Array;
  readonly end: RunEnd;
  /** Scratch for the levels at which a unit reports. */
  readonly levels: Float64Array;
  /** Something may have switched: power must be applied anew. */
  changed: boolean;
  /** Now: `minute` whole minutes and `phase` of the next one are done. */
  minute: number;
  phase: number;
  hour: number;
  nextDecision: number;
  holdUntil: number;
  firstShed: number;
  first240Loss: number;
  firstBlackout: number;
  trips: number;
  stageChanges: number;
  switchThrows: number;
}

export function now(run: Run): number {
  return run.minute + run.phase;
}

function createUnitRun(parameters: Float64Array, groupCount: number): UnitRun {
  return {
    parameters,
    state: new Float64Array(UNIT_STATE),
    saved: new Float64Array(UNIT_STATE),
    settings: new Float64Array(SETTINGS),
    loadW: new Float32Array(BLOCK_MINUTES),
    startExtraW: new Float32Array(BLOCK_MINUTES),
    shares: new Float64Array(groupCount),
    thermostatW: 0,
    thermostatStartW: 0,
    servedWmin: 0,
    event: new Int32Array(1),
    steps: 0,
    ended: 0,
    mode: ON,
    cause: 0,
    resetAt: NEVER,
    resetByPerson: false,
    triesLeft: 0,
    onSince: 0,
    downSince: 0,
    downMinutes: 0,
  };
}

/** A run at its first minute: everything on, thermostats as the draw left them. */
export function startRun(household: Household, draw: PreparedDraw, plan: ControlPlan): Run {
  const thermostatCount = draw.usage.thermostats.length;
  const units = household.parameters.map((p) => createUnitRun(p, household.groups.length));
  units.forEach((unit, u) => {
    unit.state[STORED_WMIN] = draw.startWmin[u]!;
    unit.settings[SET_DT] = 1;
    unit.triesLeft = household.units[u]!.inverter.resetTries;
  });
  const thermostats = new Float64Array(thermostatCount * THERMOSTAT_STATE);
  draw.usage.thermostats.forEach((want, i) => {
    const surroundingsC = draw.thermostatSurroundings[i]!;
    startThermostat(
      want,
      surroundingsC,
      draw.thermostatParameters,
      i * THERMOSTAT_PARAMETERS,
      thermostats,
      i * THERMOSTAT_STATE,
    );
  });
  return {
    household,
    draw,
    plan,
    control: startControl(plan),
    readings: {
      charge: new Float64Array(units.length),
      solarW: 0,
      localMinuteOfDay: 0,
      down: new Uint8Array(2),
    },
    allowedBefore: new Uint8Array(household.circuits.length),
    units,
    groups: household.groups.map(() => ({
      on: true,
      feeder: NOBODY,
      since: 0,
      onMinutes: 0,
      servedWmin: 0,
      offCause: 0,
      offUnit: -1,
    })),
    thermostats,
    thermostatsSaved: new Float64Array(thermostats.length),
    thermostatTouched: new Uint8Array(thermostatCount),
    thermostatFeeds: new Float64Array(thermostatCount * 2),
    thermostatCounted: new Float64Array(thermostatCount),
    needFirst: new Float64Array(household.needs.length).fill(Infinity),
    unmetMinutes: new Float64Array(household.circuits.length),
    end: { minute: Infinity, cause: 0, unit: -1, circuit: -1 },
    levels: new Float64Array(2),
    changed: true,
    minute: 0,
    phase: 0,
    hour: -1,
    nextDecision: 0,
    holdUntil: NEVER,
    firstShed: Infinity,
    first240Loss: Infinity,
    firstBlackout: Infinity,
    trips: 0,
    stageChanges: 0,
    switchThrows: 0,
  };
}
