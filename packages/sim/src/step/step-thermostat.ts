/**
 * One thermostatic appliance through a run of minutes. MODEL.md §4.6.
 *
 * A heater is a cooler seen upside down: the loop works on `sign × temperature`, so that "too warm" always means
 * above the band. Its power is added to the loads of the units that feed it.
 */
import { roundW } from './round-w.ts';
import type { ThermostatWant } from '../usage/usage-draw.ts';

/** Positions in the parameters of one thermostat. */
const HIGH = 0; // starts calling above this (signed °C)
const LOW = 1; // stops calling below this
const DRIFT_PER_MINUTE = 2; // 1 / time constant
const PULL_PER_MINUTE = 3;
export const RUNNING_W = 4;
const START_EXTRA_W = 5;
const GRACE_MINUTES = 6;
const LIMIT = 7; // signed °C, Infinity when it has none
const OFFSET = 8; // signed °C added to the surroundings
export const SIGN = 9;
export const THERMOSTAT_PARAMETERS = 10;

/** Positions in its state. */
export const SIGNED_C = 0;
const CALLING = 1;
const RUNNING = 2;
export const RUN_MINUTES = 3;
export const WANTED_MINUTES = 4; // minutes of running wanted: all calling ones with power, without it those that holding its setting would take
export const WAIT_MINUTES = 5; // wanted and without power since the power went
export const GRACE_PASSED_AT = 6; // first moment the wait exceeded the grace, minutes from the start; -1 = not yet
export const BEYOND_MINUTES = 7; // minutes past its limit
export const BEYOND_FIRST = 8; // the first of them; -1 = none
export const WAITED_TOO_LONG_MINUTES = 9; // all minutes of waiting beyond the grace
export const THERMOSTAT_STATE = 10;

export function thermostatParameters(want: ThermostatWant, graceMinutes: number, into: Float64Array, at: number): void {
  const { sign, setC, bandC } = want;
  into[at + HIGH] = sign * setC + bandC;
  into[at + LOW] = sign * setC - bandC;
  into[at + DRIFT_PER_MINUTE] = 1 / want.timeConstantMinutes;
  into[at + PULL_PER_MINUTE] = want.pullCPerMinute;
  into[at + RUNNING_W] = roundW(want.runningW);
  into[at + START_EXTRA_W] = want.startExtraW;
  into[at + GRACE_MINUTES] = graceMinutes;
  into[at + LIMIT] = want.limitC === undefined ? Infinity : sign * want.limitC;
  into[at + OFFSET] = sign * want.surroundingsOffsetC;
  into[at + SIGN] = sign;
}

export function startThermostat(want: ThermostatWant, state: Float64Array, at: number): void {
  state.fill(0, at, at + THERMOSTAT_STATE);
  state[at + SIGNED_C] = want.sign * want.startC;
  state[at + CALLING] = want.startCalling ? 1 : 0;
  // Running already when the grid goes: the outage's first minute is not a start.
  state[at + RUNNING] = want.startCalling ? 1 : 0;
  state[at + GRACE_PASSED_AT] = -1;
  state[at + BEYOND_FIRST] = -1;
}

/**
 * Steps it through `count` steps of `dt` minutes from `time` (minutes from the outage's start; a whole number when
 * dt is 1), the surroundings read from `minute`.
 *
 * @param toUnit0 share of its watts that unit 0 carries; 0, 0.5 or 1; likewise `toUnit1`; both 0 = no power
 */
export function stepThermostat(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
  time: number,
  dt: number,
  count: number,
  toUnit0: number,
  toUnit1: number,
  load0W: Float64Array,
  load1W: Float64Array,
  startExtra0W: Float64Array,
  startExtra1W: Float64Array,
): void {
  const high = parameters[atP + HIGH]!;
  const low = parameters[atP + LOW]!;
  const drift = parameters[atP + DRIFT_PER_MINUTE]! * dt;
  const pull = parameters[atP + PULL_PER_MINUTE]! * dt;
  const limit = parameters[atP + LIMIT]!;
  const offset = parameters[atP + OFFSET]!;
  const sign = parameters[atP + SIGN]!;
  const w0 = parameters[atP + RUNNING_W]! * toUnit0;
  const w1 = parameters[atP + RUNNING_W]! * toUnit1;
  const powered = toUnit0 + toUnit1 > 0;

  let y = state[atS + SIGNED_C]!;
  let calling = state[atS + CALLING]! !== 0;
  let running = state[atS + RUNNING]! !== 0;
  let runMinutes = state[atS + RUN_MINUTES]!;
  let wantedMinutes = state[atS + WANTED_MINUTES]!;

  for (let k = 0; k < count; k++) {
    if (calling ? y < low : y > high) calling = !calling;
    let change = (sign * surroundingsC[minute + k]! + offset - y) * drift;
    if (calling) {
      if (powered) {
        wantedMinutes += dt;
        if (!running) {
          running = true;
          const extraW = parameters[atP + START_EXTRA_W]!;
          if (extraW * toUnit0 > startExtra0W[k]!) startExtra0W[k] = extraW * toUnit0;
          if (extraW * toUnit1 > startExtra1W[k]!) startExtra1W[k] = extraW * toUnit1;
        }
        runMinutes += dt;
        change -= pull;
        load0W[k] = load0W[k]! + w0;
        load1W[k] = load1W[k]! + w1;
      } else {
        wantedMinutes += holdingShare(sign * surroundingsC[minute + k]! + offset, parameters, atP) * dt;
        waitWithoutPower(parameters, atP, state, atS, time + k, dt);
      }
    } else running = false;
    y += change;
    if (y > limit) {
      state[atS + BEYOND_MINUTES] = state[atS + BEYOND_MINUTES]! + dt;
      if (state[atS + BEYOND_FIRST]! < 0) state[atS + BEYOND_FIRST] = time + k;
    }
  }

  state[atS + SIGNED_C] = y;
  state[atS + CALLING] = calling ? 1 : 0;
  state[atS + RUNNING] = running && powered ? 1 : 0;
  state[atS + RUN_MINUTES] = runMinutes;
  state[atS + WANTED_MINUTES] = wantedMinutes;
}

/**
 * Share of the time it would run to hold its setting, 0…1. A refrigerator left off for a week calls all week, but it
 * goes without a third of that: what it wanted is what holding would have taken.
 */
function holdingShare(surroundings: number, parameters: Float64Array, atP: number): number {
  const set = (parameters[atP + HIGH]! + parameters[atP + LOW]!) / 2;
  const share = ((surroundings - set) * parameters[atP + DRIFT_PER_MINUTE]!) / parameters[atP + PULL_PER_MINUTE]!;
  return share < 0 ? 0 : share > 1 ? 1 : share;
}

/** Counts a step in which it calls and has no power. */
function waitWithoutPower(parameters: Float64Array, atP: number, state: Float64Array, atS: number, time: number, dt: number): void {
  const before = state[atS + WAIT_MINUTES]!;
  const grace = parameters[atP + GRACE_MINUTES]!;
  const wait = before + dt;
  state[atS + WAIT_MINUTES] = wait;
  if (wait <= grace) return;
  const beyond = before > grace ? dt : wait - grace;
  state[atS + WAITED_TOO_LONG_MINUTES] = state[atS + WAITED_TOO_LONG_MINUTES]! + beyond;
  if (state[atS + GRACE_PASSED_AT]! < 0) state[atS + GRACE_PASSED_AT] = time + dt - beyond;
}
