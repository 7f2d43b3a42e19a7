/** One thermostatic appliance in a run: power that comes and goes, and what is counted. MODEL.md §Usage, U9. */
import type { ThermostatWant } from '../usage/usage-draw.ts';
import {
  beginCourse,
  beginsAt,
  calledBeyond,
  calledMinutes,
  callsAt,
  countBeyond,
  courseSignedC,
  courseWantedMinutes,
  entryAt,
  fillSignedC,
  fillWantedShares,
  forgetBefore,
  startsIn,
} from './thermostat-course.ts';
import { createCourse, type ThermostatState } from './thermostat-state.ts';
import type { ThermostatPlace } from './thermostat-surroundings.ts';

/** Entries behind a run's place before they are forgotten. */
const KEPT_ENTRIES = 24;

/** Powered, at the outage's first moment. */
export function startThermostat(want: ThermostatWant, place: ThermostatPlace): ThermostatState {
  // what runs when the grid goes does not start in the first minute
  if (place.unbroken.count === 0)
    beginCourse(place.unbroken, 0, want.sign * want.startC, true, want.startCalling, false);
  return {
    course: place.unbroken,
    entry: 0,
    runBefore: 0,
    wantedBefore: 0,
    waitBefore: 0,
    gracePassedAt: -1,
    beyondMinutes: 0,
    beyondFirst: -1,
    waitedTooLongMinutes: 0,
    spare: undefined,
  };
}

/** Looks at it at `time`: what is asked next about moments near it is found at once. */
export function lookAt(place: ThermostatPlace, state: ThermostatState, time: number): void {
  state.entry = entryAt(place, state.course, state.entry, time);
}

/** Finds its entry at `time`, and forgets those long past: nobody goes back before the moment a block began at. */
export function followTo(place: ThermostatPlace, state: ThermostatState, time: number): void {
  lookAt(place, state, time);
  const { course, entry } = state;
  if (entry > KEPT_ENTRIES && course !== place.unbroken && course.powered)
    state.entry = forgetBefore(course, entry);
}

/** True while it draws its running watts. */
export function isRunning({ course, entry }: ThermostatState): boolean {
  return course.powered && callsAt(course, entry);
}

/** It runs, and began to in `minute`. */
export function startsNow({ course, entry }: ThermostatState, minute: number): boolean {
  return startsIn(course, entry, minute);
}

/** Minutes it ran from the outage's start to `time`. */
export function runMinutes(place: ThermostatPlace, state: ThermostatState, time: number): number {
  const { course, runBefore } = state;
  if (!course.powered || time === beginsAt(course)) return runBefore;
  return runBefore + calledMinutes(course, entryAt(place, course, state.entry, time), time);
}

/** Minutes of running wanted from the start to `time`: with power all calling ones, without it the holding share. */
export function wantedMinutes(place: ThermostatPlace, state: ThermostatState, time: number): number {
  const { course, wantedBefore } = state;
  if (time === beginsAt(course)) return wantedBefore;
  return wantedBefore + courseWantedMinutes(place, course, entryAt(place, course, state.entry, time), time);
}

/** Signed temperature at `time`. */
export function signedC(place: ThermostatPlace, state: ThermostatState, time: number): number {
  return courseSignedC(place, state.course, entryAt(place, state.course, state.entry, time), time);
}

/** Temperatures (unsigned, °C) at the ends of `count` minutes from `minute` on, since whose beginning power neither came nor went. */
export function fillTemperaturesC(
  place: ThermostatPlace,
  state: ThermostatState,
  minute: number,
  count: number,
  into: Float64Array,
): void {
  lookAt(place, state, minute);
  fillSignedC(place, state.course, state.entry, minute, count, into);
  const { sign } = place.parameters;
  if (sign < 0) for (let k = 0; k < count; k++) into[k] = sign * into[k]!;
}

/** Shares of the same minutes for which it wanted to run. */
export function fillWanted(
  place: ThermostatPlace,
  state: ThermostatState,
  minute: number,
  count: number,
  into: Float64Array,
): void {
  lookAt(place, state, minute);
  fillWantedShares(place, state.course, state.entry, minute, count, into);
}

/** It has no power, and by `time` called for longer than its grace. */
export function hasWaitedTooLong(place: ThermostatPlace, state: ThermostatState, time: number): boolean {
  const { course, entry, waitBefore } = state;
  if (course.powered) return false;
  return (
    waitBefore + calledMinutes(course, entryAt(place, course, entry, time), time) >
    place.parameters.graceMinutes
  );
}

/** Takes note of power that came or went at `time`. */
export function meetPower(
  place: ThermostatPlace,
  state: ThermostatState,
  time: number,
  powered: boolean,
): void {
  settle(place, state, time);
  beginAnew(place, state, time, powered, powered);
}

/** Brings every sum up to `time`, which everything after is counted from. */
export function settleThermostat(place: ThermostatPlace, state: ThermostatState, time: number): void {
  settle(place, state, time);
  beginAnew(place, state, time, state.course.powered, false);
}

function beginAnew(
  place: ThermostatPlace,
  state: ThermostatState,
  time: number,
  powered: boolean,
  starts: boolean,
): void {
  const { course, entry } = state;
  const next = state.spare ?? place.free.pop() ?? createCourse();
  const y = courseSignedC(place, course, entry, time);
  beginCourse(next, time, y, powered, callsAt(course, entry), starts);
  state.spare = course === place.unbroken ? undefined : course;
  state.course = next;
  state.entry = 0;
}

/** Counts what the present course has come to by `time`. */
function settle(place: ThermostatPlace, state: ThermostatState, time: number): void {
  const { course } = state;
  const entry = entryAt(place, course, state.entry, time);
  state.entry = entry;
  const called = calledMinutes(course, entry, time);
  state.wantedBefore += courseWantedMinutes(place, course, entry, time);
  countBeyond(place, course, entry, time, state);
  if (!course.powered) waitWithoutPower(place, state, called);
  else {
    state.runBefore += called;
    if (time > beginsAt(course)) state.waitBefore = 0;
  }
}

/** Counts the `called` minutes of a course in which it called and had no power. */
function waitWithoutPower(place: ThermostatPlace, state: ThermostatState, called: number): void {
  const { graceMinutes } = place.parameters;
  const before = state.waitBefore;
  const wait = before + called;
  state.waitBefore = wait;
  if (wait <= graceMinutes) return;
  state.waitedTooLongMinutes += wait - Math.max(before, graceMinutes);
  if (state.gracePassedAt < 0)
    state.gracePassedAt = calledBeyond(state.course, Math.max(0, graceMinutes - before));
}

/** The run is done with it: its lists are free for the next run of the draw. */
export function releaseThermostat({ unbroken, free }: ThermostatPlace, state: ThermostatState): void {
  if (state.course !== unbroken) free.push(state.course);
  if (state.spare !== undefined) free.push(state.spare);
}
