/**
 * One thermostatic appliance from switching to switching, and what is counted on the way. MODEL.md §Usage, U9.
 *
 * State is kept at the last *anchor* (a switching, power coming or going); everything between is worked out from there.
 */
import type { ThermostatWant } from '../usage/usage-draw.ts';
import { courseC, findNext, headingOf, hourOf, isRunning, signedC, stretchEnd } from './thermostat-course.ts';
import {
  ANCHOR_AT,
  ANCHOR_Y,
  BEYOND_FIRST,
  BEYOND_MINUTES,
  CALLING,
  DEPTH,
  DRIFT,
  GRACE_MINUTES,
  GRACE_PASSED_AT,
  HIGH,
  LIMIT,
  LOW,
  NEXT_AT,
  NEXT_MOST,
  NEXT_Y,
  POWERED,
  RUN_BEFORE,
  START_AT,
  WAIT_BEFORE,
  WAITED_TOO_LONG_MINUTES,
  WANTED_BEFORE,
} from './thermostat-layout.ts';
import type { ThermostatPlace } from './thermostat-surroundings.ts';

export function startThermostat(want: ThermostatWant, place: ThermostatPlace, state: Float64Array): void {
  state.fill(0);
  state[CALLING] = want.startCalling ? 1 : 0;
  state[POWERED] = 1;
  state[START_AT] = -1; // what runs when the grid goes does not start in the first minute
  state[GRACE_PASSED_AT] = -1;
  state[BEYOND_FIRST] = -1;
  setAnchor(place, state, 0, want.sign * want.startC);
}

/** Minutes it ran from the outage's start to `time`. */
export function runMinutes(state: Float64Array, time: number): number {
  return state[RUN_BEFORE]! + (isRunning(state) ? time - state[ANCHOR_AT]! : 0);
}

/** Minutes of running wanted from the start to `time`: with power all calling ones, without it the holding share. */
export function wantedMinutes(place: ThermostatPlace, state: Float64Array, time: number): number {
  const before = state[WANTED_BEFORE]!;
  if (state[CALLING]! === 0) return before;
  if (state[POWERED]! !== 0) return before + (time - state[ANCHOR_AT]!);
  return before + heldMinutes(place, state[ANCHOR_AT]!, time);
}

/**
 * Goes through the switchings that are due before minute `until`: each at its own minute, however late it is called.
 * Between them nothing needs doing.
 */
export function switchUntil(place: ThermostatPlace, state: Float64Array, until: number): void {
  while (state[NEXT_AT]! < until) switchOrGoOn(place, state);
}

/** At the minute it was expected to: switches if it is beyond the band, else goes on from a new anchor. */
export function switchOrGoOn(place: ThermostatPlace, state: Float64Array): void {
  const minute = state[NEXT_AT]!;
  const y = state[NEXT_Y]!;
  leaveAnchor(place, state, minute, state[NEXT_MOST]!);
  if (state[CALLING]! !== 0) {
    if (y < place.parameters[LOW]!) state[CALLING] = 0;
  } else if (y > place.parameters[HIGH]!) {
    state[CALLING] = 1;
    state[START_AT] = minute;
  }
  setAnchor(place, state, minute, y);
}

/** Takes note of power that came or went at `time`, in `minute`. */
export function meetPower(
  place: ThermostatPlace,
  state: Float64Array,
  minute: number,
  time: number,
  powered: boolean,
): void {
  const y = leaveAnchor(place, state, time, Infinity);
  state[POWERED] = powered ? 1 : 0;
  if (powered) state[START_AT] = minute;
  setAnchor(place, state, time, y);
}

/** Lives through `dt` of a minute from `time` to `timeAfter`: power comes or goes inside that minute. */
export function passShare(
  place: ThermostatPlace,
  state: Float64Array,
  time: number,
  dt: number,
  timeAfter: number,
): void {
  const y = leaveAnchor(place, state, time, Infinity);
  state[ANCHOR_AT] = time;
  const heading = headingOf(place, isRunning(state), hourOf(place, time));
  const after = y + (heading - y) * place.parameters[DRIFT]! * dt;
  countTime(place, state, timeAfter, dt);
  if (after > place.parameters[LIMIT]!) noteBeyond(state, time, dt);
  setAnchor(place, state, timeAfter, after);
}

/** Brings every sum up to `time`: before anybody reads them, and at the end of a run. */
export function settleThermostat(place: ThermostatPlace, state: Float64Array, time: number): void {
  setAnchor(place, state, time, leaveAnchor(place, state, time, Infinity));
}

/** Sets the anchor and works out when the next switching is due; from inside a minute, at its end. */
function setAnchor(place: ThermostatPlace, state: Float64Array, time: number, y: number): void {
  state[ANCHOR_Y] = y;
  state[ANCHOR_AT] = time;
  if (time === Math.floor(time)) findNext(place, state);
  else state[NEXT_AT] = Math.ceil(time);
}

/**
 * Books the time from the anchor to `time`, and returns the signed temperature then.
 * @param most the highest it came to on the way, Infinity when that is not known
 */
function leaveAnchor(place: ThermostatPlace, state: Float64Array, time: number, most: number): number {
  const minutes = time - state[ANCHOR_AT]!;
  if (minutes <= 0) return state[ANCHOR_Y]!;
  if (most > place.parameters[LIMIT]!) countBeyondLimit(place, state, time);
  countTime(place, state, time, minutes);
  return most === Infinity ? signedC(place, state, time) : state[NEXT_Y]!;
}

/** Books `minutes` of the present state up to `time`. */
function countTime(place: ThermostatPlace, state: Float64Array, time: number, minutes: number): void {
  const powered = state[POWERED]! !== 0;
  if (powered) state[WAIT_BEFORE] = 0;
  if (state[CALLING]! === 0) return;
  if (powered) {
    state[RUN_BEFORE] = state[RUN_BEFORE]! + minutes;
    state[WANTED_BEFORE] = state[WANTED_BEFORE]! + minutes;
    return;
  }
  state[WANTED_BEFORE] = state[WANTED_BEFORE]! + heldMinutes(place, time - minutes, time);
  waitWithoutPower(place, state, time - minutes, minutes);
}

/**
 * Minutes from `from` to `to` that it would run to hold its setting. A refrigerator left off for a week calls all week,
 * but it goes without a third of that: what it wanted is what holding would have taken.
 */
function heldMinutes(place: ThermostatPlace, from: number, to: number): number {
  const { parameters, around, movesAt } = place;
  const set = (parameters[HIGH]! + parameters[LOW]!) / 2;
  let held = 0;
  let time = from;
  while (time < to) {
    const hour = hourOf(place, time);
    const end = Math.min(to, movesAt[hour]!);
    const share = (around[hour]! - set) / parameters[DEPTH]!;
    held += (share < 0 ? 0 : share > 1 ? 1 : share) * (end - time);
    time = end;
  }
  return held;
}

/** Counts `minutes` from `time` in which it calls and has no power. */
function waitWithoutPower(place: ThermostatPlace, state: Float64Array, time: number, minutes: number): void {
  const before = state[WAIT_BEFORE]!;
  const grace = place.parameters[GRACE_MINUTES]!;
  const wait = before + minutes;
  state[WAIT_BEFORE] = wait;
  if (wait <= grace) return;
  const tooLong = before > grace ? minutes : wait - grace;
  state[WAITED_TOO_LONG_MINUTES] = state[WAITED_TOO_LONG_MINUTES]! + tooLong;
  if (state[GRACE_PASSED_AT]! < 0) state[GRACE_PASSED_AT] = time + minutes - tooLong;
}

/** Counts the minutes from the anchor to `to` that end past the limit, stretch by stretch. */
function countBeyondLimit(place: ThermostatPlace, state: Float64Array, to: number): void {
  const running = isRunning(state);
  let y = state[ANCHOR_Y]!;
  let from = state[ANCHOR_AT]!;
  const limit = place.parameters[LIMIT]!;
  while (from < to) {
    const hour = hourOf(place, from);
    const end = Math.min(to, stretchEnd(place, hour, from));
    const heading = headingOf(place, running, hour);
    const after = courseC(place, heading, y, end - from);
    if (y > limit || after > limit) countStretchBeyond(place, state, heading, y, from, end - from);
    y = after;
    from = end;
  }
}

/** The same in one stretch of `minutes`, through which the temperature runs in one direction. */
function countStretchBeyond(
  place: ThermostatPlace,
  state: Float64Array,
  heading: number,
  y: number,
  from: number,
  minutes: number,
): void {
  const limit = place.parameters[LIMIT]!;
  const endsBeyond = (k: number) => courseC(place, heading, y, k) > limit;
  const first = endsBeyond(1);
  const last = endsBeyond(minutes);
  if (!first && !last) return;
  if (first && last) {
    noteBeyond(state, from, minutes);
    return;
  }
  let low = 0; // ends like the first minute
  let high = minutes - 1; // ends like the last
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (endsBeyond(middle + 1) === first) low = middle;
    else high = middle;
  }
  if (first) noteBeyond(state, from, high);
  else noteBeyond(state, from + high, minutes - high);
}

function noteBeyond(state: Float64Array, time: number, minutes: number): void {
  state[BEYOND_MINUTES] = state[BEYOND_MINUTES]! + minutes;
  if (state[BEYOND_FIRST]! < 0) state[BEYOND_FIRST] = time;
}
