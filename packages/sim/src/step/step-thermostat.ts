/**
 * One thermostatic appliance from switching to switching, and what is counted on the way. MODEL.md §Usage, U9.
 *
 * State is kept at the last *anchor* (a switching, power coming or going); everything between is worked out from there.
 */
import type { ThermostatWant } from '../usage/usage-draw.ts';
import { courseC, findNext, headingOf, hourOf, isRunning, signedC, stretchEnd } from './thermostat-course.ts';
import { createThermostatState, type ThermostatState } from './thermostat-state.ts';
import type { ThermostatPlace } from './thermostat-surroundings.ts';

export function startThermostat(want: ThermostatWant, place: ThermostatPlace): ThermostatState {
  const state = createThermostatState(want.startCalling);
  setAnchor(place, state, 0, want.sign * want.startC);
  return state;
}

/** Minutes it ran from the outage's start to `time`. */
export function runMinutes(state: ThermostatState, time: number): number {
  return state.runBefore + (isRunning(state) ? time - state.anchorAt : 0);
}

/** Minutes of running wanted from the start to `time`: with power all calling ones, without it the holding share. */
export function wantedMinutes(place: ThermostatPlace, state: ThermostatState, time: number): number {
  const before = state.wantedBefore;
  if (!state.calling) return before;
  if (state.powered) return before + (time - state.anchorAt);
  return before + heldMinutes(place, state.anchorAt, time);
}

/**
 * Goes through the switchings that are due before minute `until`: each at its own minute, however late it is called.
 * Between them nothing needs doing.
 */
export function switchUntil(place: ThermostatPlace, state: ThermostatState, until: number): void {
  while (state.nextAt < until) switchOrGoOn(place, state);
}

/** At the minute it was expected to: switches if it is beyond the band, else goes on from a new anchor. */
export function switchOrGoOn(place: ThermostatPlace, state: ThermostatState): void {
  const minute = state.nextAt;
  const y = state.nextY;
  leaveAnchor(place, state, minute, state.nextMost);
  if (state.calling) {
    if (y < place.parameters.low) state.calling = false;
  } else if (y > place.parameters.high) {
    state.calling = true;
    state.startAt = minute;
  }
  setAnchor(place, state, minute, y);
}

/** Takes note of power that came or went at `time`, in `minute`. */
export function meetPower(
  place: ThermostatPlace,
  state: ThermostatState,
  minute: number,
  time: number,
  powered: boolean,
): void {
  const y = leaveAnchor(place, state, time, Infinity);
  state.powered = powered;
  if (powered) state.startAt = minute;
  setAnchor(place, state, time, y);
}

/** Lives through `dt` of a minute from `time` to `timeAfter`: power comes or goes inside that minute. */
export function passShare(
  place: ThermostatPlace,
  state: ThermostatState,
  time: number,
  dt: number,
  timeAfter: number,
): void {
  const y = leaveAnchor(place, state, time, Infinity);
  state.anchorAt = time;
  const heading = headingOf(place, isRunning(state), hourOf(place, time));
  const after = y + (heading - y) * place.parameters.drift * dt;
  countTime(place, state, timeAfter, dt);
  if (after > place.parameters.limit) noteBeyond(state, time, dt);
  setAnchor(place, state, timeAfter, after);
}

/** Brings every sum up to `time`: before anybody reads them, and at the end of a run. */
export function settleThermostat(place: ThermostatPlace, state: ThermostatState, time: number): void {
  setAnchor(place, state, time, leaveAnchor(place, state, time, Infinity));
}

/** Sets the anchor and works out when the next switching is due; from inside a minute, at its end. */
function setAnchor(place: ThermostatPlace, state: ThermostatState, time: number, y: number): void {
  state.anchorY = y;
  state.anchorAt = time;
  if (time === Math.floor(time)) findNext(place, state);
  else state.nextAt = Math.ceil(time);
}

/**
 * Books the time from the anchor to `time`, and returns the signed temperature then.
 * @param most the highest it came to on the way, Infinity when that is not known
 */
function leaveAnchor(place: ThermostatPlace, state: ThermostatState, time: number, most: number): number {
  const minutes = time - state.anchorAt;
  if (minutes <= 0) return state.anchorY;
  if (most > place.parameters.limit) countBeyondLimit(place, state, time);
  countTime(place, state, time, minutes);
  return most === Infinity ? signedC(place, state, time) : state.nextY;
}

/** Books `minutes` of the present state up to `time`. */
function countTime(place: ThermostatPlace, state: ThermostatState, time: number, minutes: number): void {
  const { powered } = state;
  if (powered) state.waitBefore = 0;
  if (!state.calling) return;
  if (powered) {
    state.runBefore = state.runBefore + minutes;
    state.wantedBefore = state.wantedBefore + minutes;
    return;
  }
  state.wantedBefore = state.wantedBefore + heldMinutes(place, time - minutes, time);
  waitWithoutPower(place, state, time - minutes, minutes);
}

/**
 * Minutes from `from` to `to` that it would run to hold its setting. A refrigerator left off for a week calls all week,
 * but it goes without a third of that: what it wanted is what holding would have taken.
 */
function heldMinutes(place: ThermostatPlace, from: number, to: number): number {
  const { parameters, around, movesAt } = place;
  const set = (parameters.high + parameters.low) / 2;
  let held = 0;
  let time = from;
  while (time < to) {
    const hour = hourOf(place, time);
    const end = Math.min(to, movesAt[hour]!);
    const share = (around[hour]! - set) / parameters.depth;
    held += (share < 0 ? 0 : share > 1 ? 1 : share) * (end - time);
    time = end;
  }
  return held;
}

/** Counts `minutes` from `time` in which it calls and has no power. */
function waitWithoutPower(
  place: ThermostatPlace,
  state: ThermostatState,
  time: number,
  minutes: number,
): void {
  const before = state.waitBefore;
  const grace = place.parameters.graceMinutes;
  const wait = before + minutes;
  state.waitBefore = wait;
  if (wait <= grace) return;
  const tooLong = before > grace ? minutes : wait - grace;
  state.waitedTooLongMinutes = state.waitedTooLongMinutes + tooLong;
  if (state.gracePassedAt < 0) state.gracePassedAt = time + minutes - tooLong;
}

/** Counts the minutes from the anchor to `to` that end past the limit, stretch by stretch. */
function countBeyondLimit(place: ThermostatPlace, state: ThermostatState, to: number): void {
  const running = isRunning(state);
  let y = state.anchorY;
  let from = state.anchorAt;
  const limit = place.parameters.limit;
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
  state: ThermostatState,
  heading: number,
  y: number,
  from: number,
  minutes: number,
): void {
  const first = endsBeyond(place, heading, y, 1);
  const last = endsBeyond(place, heading, y, minutes);
  if (!first && !last) return;
  if (first && last) {
    noteBeyond(state, from, minutes);
    return;
  }
  let low = 0; // ends like the first minute
  let high = minutes - 1; // ends like the last
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (endsBeyond(place, heading, y, middle + 1) === first) low = middle;
    else high = middle;
  }
  if (first) noteBeyond(state, from, high);
  else noteBeyond(state, from + high, minutes - high);
}

/** Whether the `k`th minute of the stretch ends past the limit. */
function endsBeyond(place: ThermostatPlace, heading: number, y: number, k: number): boolean {
  return courseC(place, heading, y, k) > place.parameters.limit;
}

function noteBeyond(state: ThermostatState, time: number, minutes: number): void {
  state.beyondMinutes = state.beyondMinutes + minutes;
  if (state.beyondFirst < 0) state.beyondFirst = time;
}
