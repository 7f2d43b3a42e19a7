/**
 * One thermostatic appliance through a run of minutes. MODEL.md §Usage, U9.
 *
 * A heater is a cooler seen upside down: everything here works on `sign × temperature`, so that "too warm" always
 * means above the band. While nothing switches and the surroundings hold, a minute's step
 * `y ← y + (surroundings - y)·drift - pull` has a closed form, `y(k) = h + (y(0) - h)·(1 - drift)^k` with the heading
 * `h = surroundings - pull/drift`; the minute of the next switching is found in it by halving, once. State is kept at
 * the last *anchor* (a switching, power coming or going, surroundings that moved) and everything between is worked
 * out from there, so where blocks of minutes end changes no bit.
 */
import type { ThermostatWant } from '../usage/usage-draw.ts';
import {
  REACH_MINUTES,
  MINUTES_PER_HOUR,
  AROUND_STEP_C,
  HIGH,
  LOW,
  DRIFT,
  DEPTH,
  RUNNING_W,
  START_EXTRA_W,
  GRACE_MINUTES,
  LIMIT,
  OFFSET,
  SIGN,
  PER_LOG,
  POWERS,
  ANCHOR_Y,
  ANCHOR_AT,
  AROUND,
  CALLING,
  POWERED,
  NEXT_AT,
  START_AT,
  RUN_BEFORE,
  WANTED_BEFORE,
  WAIT_BEFORE,
  GRACE_PASSED_AT,
  BEYOND_MINUTES,
  BEYOND_FIRST,
  WAITED_TOO_LONG_MINUTES,
  THERMOSTAT_STATE,
} from './thermostat-layout.ts';

export function startThermostat(
  want: ThermostatWant,
  surroundingsC: Float32Array,
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
): void {
  state.fill(0, atS, atS + THERMOSTAT_STATE);
  state[atS + CALLING] = want.startCalling ? 1 : 0;
  state[atS + POWERED] = 1;
  state[atS + START_AT] = -1; // what runs when the grid goes does not start in the first minute
  state[atS + GRACE_PASSED_AT] = -1;
  state[atS + BEYOND_FIRST] = -1;
  state[atS + AROUND] = parameters[atP + SIGN]! * surroundingsC[0]! + parameters[atP + OFFSET]!;
  setAnchor(parameters, atP, state, atS, 0, want.sign * want.startC);
}

/** True when it neither switches nor needs a new anchor in `count` minutes from `minute`: nothing but its watts matters. */
export function staysAsItIs(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
  count: number,
  powered: boolean,
): boolean {
  if (state[atS + NEXT_AT]! < minute + count || state[atS + START_AT]! >= minute) return false;
  if ((state[atS + POWERED]! !== 0) !== powered) return false;
  return minute % MINUTES_PER_HOUR !== 0 || !hasMoved(parameters, atP, state, atS, surroundingsC, minute);
}

/** True while it draws its running watts. */
export function isRunning(state: Float64Array, atS: number): boolean {
  return state[atS + CALLING]! !== 0 && state[atS + POWERED]! !== 0;
}

/** Minutes it ran from the outage's start to `time`. */
export function runMinutes(state: Float64Array, atS: number, time: number): number {
  return state[atS + RUN_BEFORE]! + (isRunning(state, atS) ? time - state[atS + ANCHOR_AT]! : 0);
}

/** Minutes of running wanted from the start to `time`: with power all calling ones, without it the holding share. */
export function wantedMinutes(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
): number {
  const before = state[atS + WANTED_BEFORE]!;
  if (state[atS + CALLING]! === 0) return before;
  const share = state[atS + POWERED]! !== 0 ? 1 : holdingShare(parameters, atP, state[atS + AROUND]!);
  return before + share * (time - state[atS + ANCHOR_AT]!);
}

/** Signed temperature at `time`, a whole number of minutes after the anchor and within its reach. */
export function signedC(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
): number {
  const heading = headingOf(parameters, atP, state, atS);
  return (
    heading +
    (state[atS + ANCHOR_Y]! - heading) * parameters[atP + POWERS + (time - state[atS + ANCHOR_AT]!)]!
  );
}

/**
 * Steps it through `count` minutes from the whole minute `minute`, adding its watts to the loads of the units.
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
  const end = minute + count;
  meetPower(parameters, atP, state, atS, minute, minute, toUnit0 + toUnit1 > 0);
  if (minute % MINUTES_PER_HOUR === 0) meetSurroundings(parameters, atP, state, atS, surroundingsC, minute);
  let m = minute;
  while (m < end) {
    if (state[atS + NEXT_AT]! === m) switchOrGoOn(parameters, atP, state, atS, m);
    const until = Math.min(end, state[atS + NEXT_AT]!);
    if (isRunning(state, atS)) {
      const watts = parameters[atP + RUNNING_W]!;
      const extraW = state[atS + START_AT]! === m ? parameters[atP + START_EXTRA_W]! : 0;
      if (toUnit0 > 0)
        carry(load0W, startExtra0W, m - minute, until - minute, watts * toUnit0, extraW * toUnit0);
      if (toUnit1 > 0)
        carry(load1W, startExtra1W, m - minute, until - minute, watts * toUnit1, extraW * toUnit1);
    }
    m = until;
  }
}

/** The same through `dt` of the minute that holds `time`, up to `timeAfter`: power came or went inside that minute. */
export function stepThermostatShare(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
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
  meetPower(parameters, atP, state, atS, minute, time, toUnit0 + toUnit1 > 0);
  if (time === minute && state[atS + NEXT_AT]! === minute) switchOrGoOn(parameters, atP, state, atS, minute);
  if (time > state[atS + ANCHOR_AT]!) anchorHere(parameters, atP, state, atS, time);
  if (isRunning(state, atS)) {
    const watts = parameters[atP + RUNNING_W]!;
    const extraW = state[atS + START_AT]! === minute ? parameters[atP + START_EXTRA_W]! : 0;
    if (toUnit0 > 0) carry(load0W, startExtra0W, 0, 1, watts * toUnit0, extraW * toUnit0);
    if (toUnit1 > 0) carry(load1W, startExtra1W, 0, 1, watts * toUnit1, extraW * toUnit1);
  }
  const y = state[atS + ANCHOR_Y]!;
  const after = y + (headingOf(parameters, atP, state, atS) - y) * parameters[atP + DRIFT]! * dt;
  countTime(parameters, atP, state, atS, dt);
  if (after > parameters[atP + LIMIT]!) noteBeyond(state, atS, time, dt);
  setAnchor(parameters, atP, state, atS, timeAfter, after);
}

/** Brings every sum up to `time`: before anybody reads them, and at the end of a run. */
export function settleThermostat(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
): void {
  if (time > state[atS + ANCHOR_AT]!) anchorHere(parameters, atP, state, atS, time);
}

/** Where its temperature is heading: the surroundings, or as far below them as its pull can hold it. */
function headingOf(parameters: Float64Array, atP: number, state: Float64Array, atS: number): number {
  const around = state[atS + AROUND]!;
  return isRunning(state, atS) ? around - parameters[atP + DEPTH]! : around;
}

/**
 * Share of the time it would run to hold its setting, 0…1. A refrigerator left off for a week calls all week, but it
 * goes without a third of that: what it wanted is what holding would have taken.
 */
function holdingShare(parameters: Float64Array, atP: number, around: number): number {
  const set = (parameters[atP + HIGH]! + parameters[atP + LOW]!) / 2;
  const share = (around - set) / parameters[atP + DEPTH]!;
  return share < 0 ? 0 : share > 1 ? 1 : share;
}

function hasMoved(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
): boolean {
  const around = parameters[atP + SIGN]! * surroundingsC[minute]! + parameters[atP + OFFSET]!;
  return Math.abs(around - state[atS + AROUND]!) > AROUND_STEP_C;
}

/** Takes the surroundings of the hour that begins, if they moved. */
function meetSurroundings(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  surroundingsC: Float32Array,
  minute: number,
): void {
  if (!hasMoved(parameters, atP, state, atS, surroundingsC, minute)) return;
  const y =
    minute > state[atS + ANCHOR_AT]!
      ? leaveAnchor(parameters, atP, state, atS, minute)
      : state[atS + ANCHOR_Y]!;
  state[atS + AROUND] = parameters[atP + SIGN]! * surroundingsC[minute]! + parameters[atP + OFFSET]!;
  setAnchor(parameters, atP, state, atS, minute, y);
}

/** Takes note of power that came or went at `time`. */
function meetPower(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  minute: number,
  time: number,
  powered: boolean,
): void {
  if ((state[atS + POWERED]! !== 0) === powered) return;
  const y =
    time > state[atS + ANCHOR_AT]! ? leaveAnchor(parameters, atP, state, atS, time) : state[atS + ANCHOR_Y]!;
  state[atS + POWERED] = powered ? 1 : 0;
  state[atS + WAIT_BEFORE] = 0;
  if (powered) state[atS + START_AT] = minute;
  setAnchor(parameters, atP, state, atS, time, y);
}

/** At the minute it was expected to: switches if it is beyond the band, else goes on from a new anchor. */
function switchOrGoOn(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  minute: number,
): void {
  const y =
    minute > state[atS + ANCHOR_AT]!
      ? leaveAnchor(parameters, atP, state, atS, minute)
      : state[atS + ANCHOR_Y]!;
  if (state[atS + CALLING]! !== 0) {
    if (y < parameters[atP + LOW]!) state[atS + CALLING] = 0;
  } else if (y > parameters[atP + HIGH]!) {
    state[atS + CALLING] = 1;
    state[atS + START_AT] = minute;
  }
  setAnchor(parameters, atP, state, atS, minute, y);
}

function anchorHere(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
): void {
  setAnchor(parameters, atP, state, atS, time, leaveAnchor(parameters, atP, state, atS, time));
}

/** Books the time from the anchor to `time`, whole minutes, and returns the signed temperature then. */
function leaveAnchor(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
): number {
  const y = signedC(parameters, atP, state, atS, time);
  const limit = parameters[atP + LIMIT]!;
  if (y > limit || state[atS + ANCHOR_Y]! > limit) countBeyondLimit(parameters, atP, state, atS, time);
  countTime(parameters, atP, state, atS, time - state[atS + ANCHOR_AT]!);
  return y;
}

/** Sets the anchor and works out when the next switching is due. */
function setAnchor(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
  y: number,
): void {
  state[atS + ANCHOR_Y] = y;
  state[atS + ANCHOR_AT] = time;
  const heading = headingOf(parameters, atP, state, atS);
  const away = y - heading;
  const threshold = parameters[atP + (state[atS + CALLING]! !== 0 ? LOW : HIGH)]!;
  state[atS + NEXT_AT] =
    Math.ceil(time) + minutesToBeyond(parameters, atP, heading, away, threshold, state[atS + CALLING]! !== 0);
}

/**
 * Whole minutes until it is beyond the threshold, 0…REACH_MINUTES: the first k with `heading + away·(1 - drift)^k`
 * past it. Solved for the power, guessed by the series of the logarithm, made exact on the table of powers.
 */
function minutesToBeyond(
  parameters: Float64Array,
  atP: number,
  heading: number,
  away: number,
  threshold: number,
  falling: boolean,
): number {
  if (falling ? heading + away < threshold : heading + away > threshold) return 0;
  if (falling ? heading >= threshold : heading <= threshold) return REACH_MINUTES; // heads for a place within the band
  const power = Math.min(1, (threshold - heading) / away); // beyond where the power of (1 - drift) falls below this, 0 < power ≤ 1
  const powers = atP + POWERS;
  if (parameters[powers + REACH_MINUTES]! >= power) return REACH_MINUTES;
  const x = 1 - power;
  let k = Math.min(
    REACH_MINUTES,
    Math.floor(parameters[atP + PER_LOG]! * x * (1 + x * (1 / 2 + x * (1 / 3 + x / 4)))),
  );
  while (parameters[powers + k]! < power) k--;
  while (parameters[powers + k]! >= power) k++;
  return k;
}

/** Books `minutes` of the present state. */
function countTime(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  minutes: number,
): void {
  if (state[atS + CALLING]! === 0) return;
  if (state[atS + POWERED]! !== 0) {
    state[atS + RUN_BEFORE] = state[atS + RUN_BEFORE]! + minutes;
    state[atS + WANTED_BEFORE] = state[atS + WANTED_BEFORE]! + minutes;
    return;
  }
  const share = holdingShare(parameters, atP, state[atS + AROUND]!);
  state[atS + WANTED_BEFORE] = state[atS + WANTED_BEFORE]! + share * minutes;
  waitWithoutPower(parameters, atP, state, atS, state[atS + ANCHOR_AT]!, minutes);
}

/** Adds watts to steps [from, to) of a unit's loads, and a start in the first of them. */
function carry(
  loadW: Float32Array,
  startExtraW: Float32Array,
  from: number,
  to: number,
  watts: number,
  extraW: number,
): void {
  for (let k = from; k < to; k++) loadW[k] = loadW[k]! + watts;
  if (extraW > startExtraW[from]!) startExtraW[from] = extraW;
}

/** Counts `minutes` from `time` in which it calls and has no power. */
function waitWithoutPower(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  time: number,
  minutes: number,
): void {
  const before = state[atS + WAIT_BEFORE]!;
  const grace = parameters[atP + GRACE_MINUTES]!;
  const wait = before + minutes;
  state[atS + WAIT_BEFORE] = wait;
  if (wait <= grace) return;
  const tooLong = before > grace ? minutes : wait - grace;
  state[atS + WAITED_TOO_LONG_MINUTES] = state[atS + WAITED_TOO_LONG_MINUTES]! + tooLong;
  if (state[atS + GRACE_PASSED_AT]! < 0) state[atS + GRACE_PASSED_AT] = time + minutes - tooLong;
}

/** Counts the minutes from the anchor to `to` that end past the limit; the temperature runs in one direction through them. */
function countBeyondLimit(
  parameters: Float64Array,
  atP: number,
  state: Float64Array,
  atS: number,
  to: number,
): void {
  const from = state[atS + ANCHOR_AT]!;
  const limit = parameters[atP + LIMIT]!;
  const first = signedC(parameters, atP, state, atS, from + 1) > limit;
  const last = signedC(parameters, atP, state, atS, to) > limit;
  if (!first && !last) return;
  if (first && last) {
    noteBeyond(state, atS, from, to - from);
    return;
  }
  let low = from; // ends like the first minute
  let high = to - 1; // ends like the last
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (signedC(parameters, atP, state, atS, middle + 1) > limit === first) low = middle;
    else high = middle;
  }
  if (first) noteBeyond(state, atS, from, high - from);
  else noteBeyond(state, atS, high, to - high);
}

function noteBeyond(state: Float64Array, atS: number, time: number, minutes: number): void {
  state[atS + BEYOND_MINUTES] = state[atS + BEYOND_MINUTES]! + minutes;
  if (state[atS + BEYOND_FIRST]! < 0) state[atS + BEYOND_FIRST] = time;
}
