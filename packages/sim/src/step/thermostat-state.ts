/** One thermostatic appliance as numbers: what does not change about it, and its state in a run. MODEL.md §Usage, U9. */
import { log } from '../portable/elementary.ts';
import type { ThermostatWant } from '../usage/usage-draw.ts';

/** Longest stretch worked out at once, minutes. */
export const REACH_MINUTES = 240;
/** Furthest that the next switching is looked for, minutes. */
export const LOOK_MINUTES = 1440;
/** Surroundings are looked at every hour and taken anew when they moved by more than this, °C. */
export const AROUND_STEP_C = 0.05;

/** Temperatures are signed: see thermostat-course.ts. */
export interface ThermostatParameters {
  /** Starts calling above this, °C; stops below that. */
  readonly high: number;
  readonly low: number;
  /** Share of the distance to the surroundings covered in a minute: 1 / time constant. */
  readonly drift: number;
  /** Pull / drift: how far below its surroundings it could hold itself, °C. */
  readonly depth: number;
  readonly runningW: number;
  readonly startExtraW: number;
  readonly graceMinutes: number;
  /** Infinity when it has none. */
  readonly limit: number;
  /** Added to the surroundings, °C. */
  readonly offset: number;
  readonly sign: number;
  /** Minutes per unit of -ln (1 - drift)^k. */
  readonly perLog: number;
  /** (1 - drift)^k for k = 0…REACH_MINUTES. */
  readonly powers: Float64Array;
}

/** Sums are up to the anchor: the last moment at which it switched, or power came or went. */
export interface ThermostatState {
  /** Temperature at the anchor, and its moment, minutes from the outage's start. */
  anchorY: number;
  anchorAt: number;
  calling: boolean;
  powered: boolean;
  /** The minute that begins beyond the band, or at which it is looked at anew; the temperature then. */
  nextAt: number;
  nextY: number;
  /** The most on the way there, at the full hours between. */
  nextMost: number;
  /** The minute in which its present run began; -1 when it was running all along. */
  startAt: number;
  runBefore: number;
  /** Minutes of running wanted. */
  wantedBefore: number;
  /** Minutes it called without power since the power went. */
  waitBefore: number;
  /** First moment the wait exceeded the grace; -1 = not yet. */
  gracePassedAt: number;
  /** Minutes past its limit; the first of them, -1 = none. */
  beyondMinutes: number;
  beyondFirst: number;
  /** All minutes of waiting beyond the grace. */
  waitedTooLongMinutes: number;
}

export function thermostatParameters(want: ThermostatWant, graceMinutes: number): ThermostatParameters {
  const { sign, setC, bandC } = want;
  const drift = 1 / want.timeConstantMinutes;
  return {
    high: sign * setC + bandC,
    low: sign * setC - bandC,
    drift,
    depth: want.pullCPerMinute / drift,
    runningW: want.runningW,
    startExtraW: want.startExtraW,
    graceMinutes,
    limit: want.limitC === undefined ? Infinity : sign * want.limitC,
    offset: sign * want.surroundingsOffsetC,
    sign,
    perLog: -1 / log(1 - drift),
    powers: powersOf(1 - drift),
  };
}

function powersOf(kept: number): Float64Array {
  const powers = new Float64Array(REACH_MINUTES + 1);
  let power = 1;
  for (let k = 0; k <= REACH_MINUTES; k++) {
    powers[k] = power;
    power *= kept;
  }
  return powers;
}

/** Powered, at the outage's first moment, its anchor still to be set. */
export function createThermostatState(calling: boolean): ThermostatState {
  return {
    anchorY: 0,
    anchorAt: 0,
    calling,
    powered: true,
    nextAt: 0,
    nextY: 0,
    nextMost: 0,
    startAt: -1, // what runs when the grid goes does not start in the first minute
    runBefore: 0,
    wantedBefore: 0,
    waitBefore: 0,
    gracePassedAt: -1,
    beyondMinutes: 0,
    beyondFirst: -1,
    waitedTooLongMinutes: 0,
  };
}

export function copyThermostatState(from: ThermostatState, into: ThermostatState): void {
  into.anchorY = from.anchorY;
  into.anchorAt = from.anchorAt;
  into.calling = from.calling;
  into.powered = from.powered;
  into.nextAt = from.nextAt;
  into.nextY = from.nextY;
  into.nextMost = from.nextMost;
  into.startAt = from.startAt;
  into.runBefore = from.runBefore;
  into.wantedBefore = from.wantedBefore;
  into.waitBefore = from.waitBefore;
  into.gracePassedAt = from.gracePassedAt;
  into.beyondMinutes = from.beyondMinutes;
  into.beyondFirst = from.beyondFirst;
  into.waitedTooLongMinutes = from.waitedTooLongMinutes;
}
