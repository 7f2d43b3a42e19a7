/** The state of one run: one draw lived through under one strategy. */
import { startControl, type ControlPlan, type ControlState } from '../shedding/control.ts';
import type { Readings } from '../shedding/gates.ts';
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import {
  createUnitSettings,
  createUnitState,
  type UnitSettings,
  type UnitState,
} from '../power/step-unit.ts';
import type { UnitParameters } from '../power/unit-parameters.ts';
import type { Household } from './household.ts';
import type { LoadPattern } from './load-pattern.ts';
import type { PreparedDraw } from './prepared-draw.ts';
import { startSources, type SourcesRun } from './sources-run.ts';
import { createSwitchings, type Switchings } from './switchings.ts';
import { releaseThermostat, startThermostat } from './step-thermostat.ts';
import type { ThermostatState } from './thermostat-state.ts';

/** What a unit is doing. Everything from EMPTY on counts as down. */
export const ON = 0;
export const ASLEEP = 1;
export const EMPTY_BANK = 2;
export const TRIPPED = 3;
export const PARTNER_STOPPED = 4;

/** Longest block; one hour where sources feed. What a unit has done in vain when the other stops is lost. */
export const BLOCK_HOURS = 6;
const NEVER = Infinity;

/** One unit of a run. */
export interface UnitRun {
  readonly parameters: UnitParameters;
  /** See power/step-unit.ts; `saved` is its copy from before the present block. */
  readonly state: UnitState;
  readonly saved: UnitState;
  readonly settings: UnitSettings;
  /** Per group, share of its watts that this unit carries now. */
  pattern: LoadPattern;
  /** Watts of the thermostats on it if all ran. */
  thermostatW: number;
  /** Delivered to circuits in the stretches closed so far. */
  servedWmin: number;
  /** What its thermostats do next. */
  readonly ahead: Switchings;
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
  /** When its feeder last changed, and what it had wanted by then. */
  since: number;
  sinceWmin: number;
  /** Since when it has had no power that lasted: power that goes in the instant it came does not count. */
  withoutSince: number;
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
  readonly units: readonly UnitRun[];
  readonly groups: readonly GroupRun[];
  /** Undefined for a household that has none. */
  readonly sources: SourcesRun | undefined;
  /** Each one's own part of it. */
  readonly thermostatStates: readonly ThermostatState[];
  /** 1 for each whose power came or went where the present block begins, as copied before; true when any did. */
  readonly thermostatMoved: Uint8Array;
  anyMoves: boolean;
  readonly thermostatsBefore: readonly ThermostatState[];
  /** Scratch: which of them somebody looks at, how far each was looked through, and when its next entry is. */
  readonly lookedAt: { readonly who: Int32Array; readonly entries: Int32Array; readonly next: Float64Array };
  /** Shares of each thermostat's watts carried by unit 0 and unit 1: two values each. */
  readonly thermostatFeeds: Float64Array;
  /** Run minutes of each thermostat that are in the units' `servedWmin`. */
  readonly thermostatCounted: Float64Array;
  /** What of each thermostat's notes is passed on: see unmet.ts. */
  readonly thermostatNoted: Uint8Array;
  /** Power may have come to or gone from some of them. */
  thermostatsMoved: boolean;
  /** Per need, first minute unmet (Infinity = never); per circuit, minutes wanted beyond its grace without power. */
  readonly needFirst: Float64Array;
  readonly unmetMinutes: Float64Array;
  readonly end: RunEnd;
  /** Scratch for the levels at which a unit reports. */
  readonly levels: Float64Array;
  /** Something may have switched: power must be applied anew. */
  changed: boolean;
  /** Units must be told anew what to do and when to report. */
  unsettled: boolean;
  /** Now: `minute` whole minutes and `phase` of the next one are done. */
  minute: number;
  phase: number;
  /** The present block: it began at `blockFrom` and goes to `blockTo` unless something stops it; `cut` while somebody looks at it on the way. */
  blockFrom: number;
  blockTo: number;
  /** A unit stops in this minute if nothing changes in it: no need to try more. */
  stopAt: number;
  cut: boolean;
  /** The hour of the outage that has begun last. */
  hour: number;
  nextDecision: number;
  /** When tiers were held back last, and until when they stay so. */
  heldAt: number;
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

function createUnitRun(parameters: UnitParameters, pattern: LoadPattern, storedWmin: number): UnitRun {
  return {
    parameters,
    state: createUnitState(storedWmin),
    saved: createUnitState(storedWmin),
    settings: createUnitSettings(),
    pattern,
    thermostatW: 0,
    servedWmin: 0,
    ahead: createSwitchings(),
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
  const units = household.parameters.map((p, u) =>
    createUnitRun(p, draw.hourLoads.patterns.nothing, draw.startWmin[u]!),
  );
  units.forEach((unit, u) => {
    unit.triesLeft = household.units[u]!.inverter.resetTries;
  });
  const { thermostats } = draw.usage;
  const startThermostats = () =>
    thermostats.map((want, i) => startThermostat(want, draw.thermostatPlaces[i]!));
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
    units,
    groups: household.groups.map(() => ({
      on: true,
      feeder: NOBODY,
      since: 0,
      sinceWmin: 0,
      withoutSince: 0,
      onMinutes: 0,
      servedWmin: 0,
      offCause: 0,
      offUnit: -1,
    })),
    sources:
      household.sources === undefined || draw.sources === undefined
        ? undefined
        : startSources(household.sources, draw.sources, household.strategies.indexOf(plan), MINUTES_PER_HOUR),
    thermostatStates: startThermostats(),
    thermostatMoved: new Uint8Array(thermostatCount),
    anyMoves: false,
    thermostatsBefore: startThermostats(),
    lookedAt: {
      who: new Int32Array(thermostatCount),
      entries: new Int32Array(thermostatCount),
      next: new Float64Array(thermostatCount),
    },
    thermostatFeeds: new Float64Array(thermostatCount * 2),
    thermostatCounted: new Float64Array(thermostatCount),
    thermostatNoted: new Uint8Array(thermostatCount),
    thermostatsMoved: true,
    needFirst: new Float64Array(household.needs.length).fill(Infinity),
    unmetMinutes: new Float64Array(household.circuits.length),
    end: { minute: Infinity, cause: 0, unit: -1, circuit: -1 },
    levels: new Float64Array(2),
    changed: true,
    unsettled: true,
    minute: 0,
    phase: 0,
    blockFrom: 0,
    blockTo: 0,
    stopAt: -1,
    cut: false,
    hour: -1,
    nextDecision: 0,
    heldAt: -1,
    holdUntil: NEVER,
    firstShed: Infinity,
    first240Loss: Infinity,
    firstBlackout: Infinity,
    trips: 0,
    stageChanges: 0,
    switchThrows: 0,
  };
}

/** Nobody reads the run any more: what it filled is free for the next one of its draw. */
export function releaseRun({ draw, thermostatStates }: Run): void {
  thermostatStates.forEach((state, i) => releaseThermostat(draw.thermostatPlaces[i]!, state));
}
