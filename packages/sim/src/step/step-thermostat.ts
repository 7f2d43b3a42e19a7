/**
 * One thermostatic appliance through a run of minutes. MODEL.md §4.6.
 *
 * A heater is a cooler seen upside down: everything here works on `sign × temperature`, so that "too warm" always
 * means above the band. Between two switchings, with surroundings that hold for an hour, a minute's step
 * `y ← y + (surroundings - y)·drift - pull` has a closed form, `y(k) = e + (y(0) - e)·(1 - drift)^k`; the loop goes
 * from switching to switching with it and finds each by halving. State is kept at the last *anchor* (a switching, a
 * full hour, power coming or going), never at a block's end, so that where blocks end changes no bit.
 */
import type { ThermostatWant } from '../usage/usage-draw.ts';

const MINUTES_PER_HOUR = 60;

/** Positions in the parameters of one thermostat. */
const HIGH = 0; // starts calling above this (signed °C)
const LOW = 1; // stops calling below this
const DRIFT = 2; // share of the distance to the surroundings covered in a minute: 1 / time constant
const PULL = 3; // °C a minute that running moves it
export const RUNNING_W = 4;
const START_EXTRA_W = 5;
const GRACE_MINUTES = 6;
const LIMIT = 7; // signed °C, Infinity when it has none
const OFFSET = 8; // signed °C added to the surroundings
export const SIGN = 9;
const POWERS = 10; // (1 - drift)^k for k = 0…60
export const THERMOSTAT_PARAMETERS = POWERS + MINUTES_PER_HOUR + 1;

/** Positions in its state. */
const ANCHOR_Y = 0; // signed °C at the anchor
const ANCHOR_AT = 1; // its moment, minutes from the outage's start
const AROUND = 2; // signed surroundings of the present hour, °C
const CALLING = 3;
const RUNNING = 4; // was running at the end of the last call
const POWERED = 5;
export const RUN_MINUTES = 6;
const WANTED_BEFORE = 7; // minutes of running wanted up to the anchor
export const WAIT_MINUTES = 8; // wanted and without power since the power went
export const GRACE_PASSED_AT = 9; // first moment the wait exceeded the grace, minutes from the start; -1 = not yet
export const BEYOND_MINUTES = 10; // minutes past its limit
export const BEYOND_FIRST = 11; // the first of them; -1 = none
export const WAITED_TOO_LONG_MINUTES = 12; // all minutes of waiting beyond the grace
export const THERMOSTAT_STATE = 13;

export function thermostatParameters(want: ThermostatWant, graceMinutes: number, into: Float64Array, at: number): void {
  const { sign, setC, bandC } = want;
  const drift = 1 / want.timeConstantMinutes;
  into[at + HIGH] = sign * setC + bandC;
  into[at + LOW] = sign * setC - bandC;
  into[at + DRIFT] = drift;
  into[at + PULL] = want.pullCPerMinute;
  into[at + RUNNING_W] = want.runningW;
  into[at + START_EXTRA_W] = want.startExtraW;
  into[at + GRACE_MINUTES] = graceMinutes;
  into[at + LIMIT] = want.limitC === undefined ? Infinity : sign * want.limitC;
  into[at + OFFSET] = sign * want.surroundingsOffsetC;
  into[at + SIGN] = sign;
  let power = 1;
  for (let k = 0; k <= MINUTES_PER_HOUR; k++) {
    into[at + POWERS + k] = power;
    power *= 1 - drift;
  }
}

export function startThermostat(want: ThermostatWant, state: Float64Array, at: number): void {
  state.fill(0, at, at + THERMOSTAT_STATE);
  state[at + ANCHOR_Y] = want.sign * want.startC;
  state[at + CALLING] = want.startCalling ? 1 : 0;
  state[at + RUNNING] = want.startCalling ? 1 : 0; // running when the grid goes: the first minute is not a start
  state[at + POWERED] = 1;
  state[at + GRACE_PASSED_AT] = -1;
  state[at + BEYOND_FIRST] = -1;
}

/** Where its temperature is heading: the surroundings, or as far below them as its pull can hold it. */
function headingFor(parameters: Float64Array, atP: number, around: number, running: boolean): number {
  return running ? around - parameters[atP + PULL]! / parameters[atP + DRIFT]! : around;
}

/** Signed temperature at `time`, which is not before the anchor nor past its hour. */
export function signedC(parameters: Float64Array, atP: number, state: Float64Array, atS: number, time: number): number {
  const running = state[atS + CALLING]! !== 0 && state[atS + POWERED]! !== 0;
  const heading = headingFor(parameters, atP, state[atS + AROUND]!, running);
  const away = state[atS + ANCHOR_Y]! - heading;
  return heading + away * parameters[atP + POWERS + (time - state[atS + ANCHOR_AT]!)]!;
}

/**
 * Share of the time it would run to hold its setting, 0…1. A refrigerator left off for a week calls all week, but it
 * goes without a third of that: what it wanted is what holding would have taken.
 */
function holdingShare(parameters: Float64Array, atP: number, around: number): number {
  const set = (parameters[atP + HIGH]! + parameters[atP + LOW]!) / 2;
  const share = ((around - set) * parameters[atP + DRIFT]!) / parameters[atP + PULL]!;
  return share < 0 ? 0 : share > 1 ? 1 : share;
}

/** Minutes of running wanted from the outage's start to `time`: with power all calling ones, without it the holding share. */
export function wantedMinutes(parameters: Float64Array, atP: number, state: Float64Array, atS: number, time: number): number {
  const before = state[atS + WANTED_BEFORE]!;
  if (state[atS + CALLING]! === 0) return before;
  const share = state[atS + POWERED]! !== 0 ? 1 : holdingShare(parameters, atP, state[atS + AROUND]!);
  return before + share * (time - state[atS + ANCHOR_AT]!);
}

/** Moves the anchor to `time`, at which the temperature is `y`. */
function anchorAt(parameters: Float64Array, atP: number, state: Float64Array, atS: number, time: number, y: number): void {
  state[atS + WANTED_BEFORE] = wantedMinutes(parameters, atP, state, atS, time);
  state[atS + ANCHOR_Y] = y;
  state[atS + ANCHOR_AT] = time;
}

/**
 * Steps it through `count` minutes from the whole minute `minute`, all within one hour of the outage.
 *
 * @param toUnit0 share of its watts that unit 0 carries: 0, 0.5 or 1; likewise `toUnit1`; both 0 = no power
 */
export function stepThermostat(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
  count: number,
  toUnit0: number,
  toUnit1: number,
  load0W: Float32Array,
  load1W: Float32Array,
  startExtra0W: Float32Array,
  startExtra1W: Float32Array,
): void {
  const powered = toUnit0 + toUnit1 > 0;
  meetHourAndPower(parameters, atP, state, atS, surroundingsC, minute, minute, powered);
  const high = parameters[atP + HIGH]!;
  const low = parameters[atP + LOW]!;
  const around = state[atS + AROUND]!;
  const end = minute + count;
  let calling = state[atS + CALLING]! !== 0;
  let m = minute;
  while (m < end) {
    const anchor = state[atS + ANCHOR_AT]!;
    const heading = headingFor(parameters, atP, around, calling && powered);
    const away = state[atS + ANCHOR_Y]! - heading;
    const powers = atP + POWERS - anchor;
    const next = nextSwitch(parameters, powers, heading, away, calling, calling ? low : high, m, end);
    if (next > m) {
      if (calling) {
        if (powered) {
          const extraW = parameters[atP + START_EXTRA_W]!;
          const starts = state[atS + RUNNING]! === 0;
          if (toUnit0 > 0) carry(load0W, startExtra0W, m - minute, next - minute, parameters[atP + RUNNING_W]! * toUnit0, starts ? extraW * toUnit0 : 0);
          if (toUnit1 > 0) carry(load1W, startExtra1W, m - minute, next - minute, parameters[atP + RUNNING_W]! * toUnit1, starts ? extraW * toUnit1 : 0);
          state[atS + RUN_MINUTES] = state[atS + RUN_MINUTES]! + (next - m);
          state[atS + RUNNING] = 1;
        } else waitWithoutPower(parameters, atP, state, atS, m, next - m);
      }
      if (parameters[atP + LIMIT]! < Infinity) countBeyondLimit(parameters, atP, state, atS, heading, away, powers, m, next);
    }
    m = next;
    if (next < end) {
      anchorAt(parameters, atP, state, atS, next, heading + away * parameters[powers + next]!);
      calling = !calling;
      state[atS + CALLING] = calling ? 1 : 0;
      if (!calling) state[atS + RUNNING] = 0;
    }
  }
}

/**
 * First minute of [from, end) that begins beyond the threshold, or `end`. The way there runs in one direction, so
 * the last minute tells whether there is one.
 */
function nextSwitch(
  parameters: Float64Array,
  powers: number,
  heading: number,
  away: number,
  calling: boolean,
  threshold: number,
  from: number,
  end: number,
): number {
  if (isBeyond(heading + away * parameters[powers + from]!, threshold, calling)) return from;
  if (!isBeyond(heading + away * parameters[powers + end - 1]!, threshold, calling)) return end;
  let before = from;
  let beyond = end - 1;
  while (beyond - before > 1) {
    const middle = (before + beyond) >> 1;
    if (isBeyond(heading + away * parameters[powers + middle]!, threshold, calling)) beyond = middle;
    else before = middle;
  }
  return beyond;
}

function isBeyond(y: number, threshold: number, calling: boolean): boolean {
  return calling ? y < threshold : y > threshold;
}

/** The same through `dt` of the minute that holds `time`, up to `timeAfter`: power came or went inside that minute. */
export function stepThermostatShare(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
  time: number,
  dt: number,
  timeAfter: number,
  toUnit0: number,
  toUnit1: number,
  load0W: Float32Array,
  load1W: Float32Array,
  startExtra0W: Float32Array,
  startExtra1W: Float32Array,
): void {
  const powered = toUnit0 + toUnit1 > 0;
  meetHourAndPower(parameters, atP, state, atS, surroundingsC, minute, time, powered);
  const y = time === state[atS + ANCHOR_AT]! ? state[atS + ANCHOR_Y]! : signedC(parameters, atP, state, atS, time);
  let calling = state[atS + CALLING]! !== 0;
  if (calling ? y < parameters[atP + LOW]! : y > parameters[atP + HIGH]!) {
    anchorAt(parameters, atP, state, atS, time, y);
    calling = !calling;
    state[atS + CALLING] = calling ? 1 : 0;
    if (!calling) state[atS + RUNNING] = 0;
  }
  if (calling && powered) {
    const extraW = state[atS + RUNNING]! === 0 ? parameters[atP + START_EXTRA_W]! : 0;
    if (toUnit0 > 0) carry(load0W, startExtra0W, 0, 1, parameters[atP + RUNNING_W]! * toUnit0, extraW * toUnit0);
    if (toUnit1 > 0) carry(load1W, startExtra1W, 0, 1, parameters[atP + RUNNING_W]! * toUnit1, extraW * toUnit1);
    state[atS + RUN_MINUTES] = state[atS + RUN_MINUTES]! + dt;
    state[atS + RUNNING] = 1;
  } else if (calling) waitWithoutPower(parameters, atP, state, atS, time, dt);
  const heading = headingFor(parameters, atP, state[atS + AROUND]!, calling && powered);
  const after = y + (heading - y) * parameters[atP + DRIFT]! * dt;
  anchorAt(parameters, atP, state, atS, timeAfter, after);
  if (after > parameters[atP + LIMIT]!) noteBeyond(state, atS, time, dt);
}

/** Anchors anew where an hour begins or power comes or goes. */
function meetHourAndPower(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
  time: number,
  powered: boolean,
): void {
  const newHour = time === minute && minute % MINUTES_PER_HOUR === 0;
  const was = state[atS + POWERED]! !== 0;
  if (!newHour && was === powered) return;
  if (time > state[atS + ANCHOR_AT]!) anchorAt(parameters, atP, state, atS, time, signedC(parameters, atP, state, atS, time));
  if (newHour) state[atS + AROUND] = parameters[atP + SIGN]! * surroundingsC[minute]! + parameters[atP + OFFSET]!;
  if (was !== powered) {
    state[atS + POWERED] = powered ? 1 : 0;
    if (!powered) state[atS + RUNNING] = 0;
  }
}

/** Adds watts to steps [from, to) of a unit's loads, and a start in the first of them. */
function carry(loadW: Float32Array, startExtraW: Float32Array, from: number, to: number, watts: number, extraW: number): void {
  for (let k = from; k < to; k++) loadW[k] = loadW[k]! + watts;
  if (extraW > startExtraW[from]!) startExtraW[from] = extraW;
}

/** Counts `minutes` from `time` in which it calls and has no power. */
function waitWithoutPower(parameters: Float64Array, atP: number, state: Float64Array, atS: number, time: number, minutes: number): void {
  const before = state[atS + WAIT_MINUTES]!;
  const grace = parameters[atP + GRACE_MINUTES]!;
  const wait = before + minutes;
  state[atS + WAIT_MINUTES] = wait;
  if (wait <= grace) return;
  const tooLong = before > grace ? minutes : wait - grace;
  state[atS + WAITED_TOO_LONG_MINUTES] = state[atS + WAITED_TOO_LONG_MINUTES]! + tooLong;
  if (state[atS + GRACE_PASSED_AT]! < 0) state[atS + GRACE_PASSED_AT] = time + minutes - tooLong;
}

/** Counts the minutes of [from, to) that end past the limit. The temperature runs in one direction through them. */
function countBeyondLimit(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  heading: number,
  away: number,
  powers: number,
  from: number,
  to: number,
): void {
  const limit = parameters[atP + LIMIT]!;
  const first = heading + away * parameters[powers + from + 1]! > limit;
  const last = heading + away * parameters[powers + to]! > limit;
  if (!first && !last) return;
  if (first && last) return noteBeyond(state, atS, from, to - from);
  let low = from; // like the first
  let high = to - 1; // like the last
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (heading + away * parameters[powers + middle + 1]! > limit === first) low = middle;
    else high = middle;
  }
  if (first) noteBeyond(state, atS, from, high - from);
  else noteBeyond(state, atS, high, to - high);
}

function noteBeyond(state: Float64Array, atS: number, time: number, minutes: number): void {
  state[atS + BEYOND_MINUTES] = state[atS + BEYOND_MINUTES]! + minutes;
  if (state[atS + BEYOND_FIRST]! < 0) state[atS + BEYOND_FIRST] = time;
}
