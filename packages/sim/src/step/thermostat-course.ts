/**
 * The course of one thermostatic appliance from the moment at which power came or went. MODEL.md §Usage, U9.
 *
 * Until power comes or goes again it follows from its beginning alone: a list of the moments at which the appliance
 * starts or stops calling, worked out as far as somebody has asked. A run keeps its place in the list, so going back is
 * finding an earlier place, and the course that begins with the outage serves every run of the draw.
 *
 * A course goes from one stretch whose surroundings hold to the next: see thermostat-stretch.ts.
 */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { LOOK_MINUTES, REACH_MINUTES } from './thermostat-parameters.ts';
import type { BeyondLimit, ThermostatCourse } from './thermostat-state.ts';
import {
  afterMinutes,
  afterShare,
  countStretchBeyond,
  headingOf,
  heldMinutes,
  heldShare,
  hourOf,
  minutesToBeyond,
  noteBeyond,
  stretchEnd,
} from './thermostat-stretch.ts';
import type { ThermostatPlace } from './thermostat-surroundings.ts';

/** Positions in an entry of the list: a moment at which it starts or stops calling, or is looked at anew. */
const AT = 0; // minutes from the outage's start: whole, but for a course that begins inside a minute
const SIGNED_C = 1;
const STATE = 2; // IDLE, CALLS or STARTS
const CALLED = 3; // minutes for which it has called since the course began
const WANTED = 4; // minutes of running wanted since then
const BEYOND = 5; // minutes past its limit since then
const FIGURES = 6;

const IDLE = 0;
const CALLS = 1;
/** It calls, and began to in the entry's minute. */
const STARTS = 2;

const FIRST_ENTRIES = 32;

/** @param starts it calls and has just been given power: not so when the outage begins */
export function beginCourse(
  course: ThermostatCourse,
  time: number,
  y: number,
  powered: boolean,
  calling: boolean,
  starts: boolean,
): void {
  if (course.entries.length === 0) grow(course);
  const { entries } = course;
  course.powered = powered;
  course.count = 1;
  course.beyondMinutes = 0;
  course.beyondFirst = -1;
  entries[AT] = time;
  entries[SIGNED_C] = y;
  entries[STATE] = calling ? (starts ? STARTS : CALLS) : IDLE;
  entries[CALLED] = 0;
  entries[WANTED] = 0;
  entries[BEYOND] = 0;
}

export function beginsAt({ entries }: ThermostatCourse): number {
  return entries[AT]!;
}

export function callsAt({ entries }: ThermostatCourse, index: number): boolean {
  return entries[index * FIGURES + STATE] !== IDLE;
}

/** The entry is a start in `minute`. */
export function startsIn({ entries }: ThermostatCourse, index: number, minute: number): boolean {
  const at = index * FIGURES;
  return entries[at + STATE] === STARTS && Math.floor(entries[at + AT]!) === minute;
}

/** Moment of the entry after `index`, which is worked out if nobody has asked for it yet. */
export function nextEntryAt(place: ThermostatPlace, course: ThermostatCourse, index: number): number {
  if (index + 1 === course.count) workOutNext(place, course);
  return course.entries[(index + 1) * FIGURES + AT]!;
}

/** The entry that holds at `time`, given one near it. */
export function entryAt(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  time: number,
): number {
  let found = index;
  while (course.entries[found * FIGURES + AT]! > time) found--;
  while (nextEntryAt(place, course, found) <= time) found++;
  return found;
}

/** Minutes for which it has called from the course's beginning to `time`, at which entry `index` holds. */
export function calledMinutes(course: ThermostatCourse, index: number, time: number): number {
  const at = index * FIGURES;
  const { entries } = course;
  return entries[at + CALLED]! + (entries[at + STATE] === IDLE ? 0 : time - entries[at + AT]!);
}

/** Minutes of running wanted: with power all calling ones, without it the holding share. */
export function courseWantedMinutes(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  time: number,
): number {
  if (course.powered) return calledMinutes(course, index, time);
  const at = index * FIGURES;
  const { entries } = course;
  const wanted = entries[at + WANTED]!;
  return entries[at + STATE] === IDLE ? wanted : wanted + heldMinutes(place, entries[at + AT]!, time);
}

/** Signed temperature at `time`, at which entry `index` holds. */
export function courseSignedC(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  time: number,
): number {
  const at = index * FIGURES;
  const running = course.powered && course.entries[at + STATE] !== IDLE;
  let y = course.entries[at + SIGNED_C]!;
  let from = course.entries[at + AT]!;
  const whole = Math.floor(time);
  while (from < whole) {
    const hour = hourOf(place, from);
    const to = Math.min(whole, stretchEnd(place, hour, from));
    y = afterMinutes(place, headingOf(place, running, hour), y, to - from);
    from = to;
  }
  return time > from ? afterShare(place, running, y, from, time) : y;
}

/**
 * Signed temperatures at the ends of `count` minutes from `minute` (whole) on, at which entry `index` holds: the bits of
 * `courseSignedC` at each of them.
 */
export function fillSignedC(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  minute: number,
  count: number,
  into: Float64Array,
): void {
  const { powers } = place.parameters;
  const end = minute + count;
  for (let found = index, filled = minute; filled < end; found++) {
    const until = Math.min(end, nextEntryAt(place, course, found));
    const at = found * FIGURES;
    const running = course.powered && course.entries[at + STATE] !== IDLE;
    let y = course.entries[at + SIGNED_C]!;
    let from = course.entries[at + AT]!;
    while (from < until) {
      const hour = hourOf(place, from);
      const to = Math.min(until, stretchEnd(place, hour, from));
      const heading = headingOf(place, running, hour);
      const away = y - heading;
      for (let m = Math.max(filled, from); m < to; m++)
        into[m - minute] = heading + away * powers[m + 1 - from]!;
      y = afterMinutes(place, heading, y, to - from);
      from = to;
    }
    filled = until;
  }
}

/** Shares of the same minutes for which it wants to run: with power all that it calls, without it the holding share. */
export function fillWantedShares(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  minute: number,
  count: number,
  into: Float64Array,
): void {
  const end = minute + count;
  for (let found = index, from = minute; from < end; found++) {
    const until = Math.min(end, nextEntryAt(place, course, found));
    const calls = callsAt(course, found);
    while (from < until) {
      const hour = hourOf(place, from);
      const to = course.powered || !calls ? until : Math.min(until, place.movesAt[hour]!);
      into.fill(!calls ? 0 : course.powered ? 1 : heldShare(place, hour), from - minute, to - minute);
      from = to;
    }
  }
}

/** Counts into `tally` what the course has spent past its limit up to `time`, at which entry `index` holds. */
export function countBeyond(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  time: number,
  tally: BeyondLimit,
): void {
  if (place.parameters.limit === Infinity) return;
  const before = course.entries[index * FIGURES + BEYOND]!;
  if (before > 0) noteBeyond(tally, course.beyondFirst, before);
  countEntryBeyond(place, course, index, time, tally);
}

/** When the minutes for which it has called since the course began exceed `minutes`; they are known to. */
export function calledBeyond(course: ThermostatCourse, minutes: number): number {
  const { entries, count } = course;
  let at = 0;
  for (let index = 1; index < count; index++) {
    if (entries[index * FIGURES + CALLED]! > minutes) break;
    at = index * FIGURES;
  }
  return entries[at + AT]! + (minutes - entries[at + CALLED]!);
}

/** Forgets the entries before `index`; returns where it is now. What was counted up to it stays. */
export function forgetBefore(course: ThermostatCourse, index: number): number {
  course.entries.copyWithin(FIGURES, index * FIGURES, course.count * FIGURES);
  course.count -= index - 1;
  return 1;
}

function workOutNext(place: ThermostatPlace, course: ThermostatCourse): void {
  if ((course.count + 1) * FIGURES > course.entries.length) grow(course);
  const { entries, powered } = course;
  const from = (course.count - 1) * FIGURES;
  const calling = entries[from + STATE] !== IDLE;
  const time = entries[from + AT]!;
  const next = from + FIGURES;
  const most =
    time === Math.floor(time)
      ? findNext(place, entries, from, calling, powered)
      : endMinute(place, entries, from, calling && powered);
  const at = entries[next + AT]!;
  const called = calling ? at - time : 0;
  entries[next + CALLED] = entries[from + CALLED]! + called;
  entries[next + WANTED] =
    entries[from + WANTED]! + (powered || !calling ? called : heldMinutes(place, time, at));
  if (most > place.parameters.limit) countEntryBeyond(place, course, course.count - 1, at, course);
  entries[next + BEYOND] = course.beyondMinutes;
  course.count++;
}

function grow(course: ThermostatCourse): void {
  const { entries } = course;
  course.entries = new Float64Array(Math.max(FIRST_ENTRIES * FIGURES, 2 * entries.length));
  course.entries.set(entries);
}

/** The entry after one inside a minute: that minute's end, where nothing switches yet. Returns the highest on the way. */
function endMinute(place: ThermostatPlace, entries: Float64Array, from: number, running: boolean): number {
  const time = entries[from + AT]!;
  const end = Math.ceil(time);
  const y = afterShare(place, running, entries[from + SIGNED_C]!, time, end);
  entries[from + FIGURES + AT] = end;
  entries[from + FIGURES + SIGNED_C] = y;
  entries[from + FIGURES + STATE] = entries[from + STATE] === IDLE ? IDLE : CALLS;
  return Math.max(y, entries[from + SIGNED_C]!);
}

/**
 * The entry after one at a whole minute: the minute that begins beyond the band, or the furthest that is looked at.
 * Returns the highest temperature on the way, at the ends of the stretches between.
 */
function findNext(
  { parameters, around, movesAt }: ThermostatPlace,
  entries: Float64Array,
  from: number,
  calling: boolean,
  powered: boolean,
): number {
  const { low, high, drift, powers } = parameters;
  const depth = calling && powered ? parameters.depth : 0;
  const threshold = calling ? low : high;
  let y = entries[from + SIGNED_C]!;
  let most = y;
  let minute = entries[from + AT]! | 0;
  const last = minute + LOOK_MINUTES;
  const lastHour = around.length - 1;
  while (minute < last) {
    let hour = (minute / MINUTES_PER_HOUR) | 0;
    if (hour > lastHour) hour = lastHour;
    const heading = around[hour]! - depth;
    let reach = movesAt[hour]! - minute;
    if (reach > REACH_MINUTES) reach = REACH_MINUTES;
    if (reach > last - minute) reach = last - minute;
    const away = y - heading;
    // It moves by at most |away|·drift a minute: most stretches are seen at a glance not to reach the threshold.
    const room = calling ? y - threshold : threshold - y;
    const approaches = calling ? heading < threshold : heading > threshold; // or heads for a place within the band
    if (room < 0 || (approaches && room < Math.abs(away) * drift * reach)) {
      const k = room < 0 ? 0 : minutesToBeyond(parameters, away, threshold - heading);
      if (k < reach) {
        y = heading + away * powers[k]!;
        if (y > most) most = y;
        minute += k;
        break;
      }
    }
    y = heading + away * powers[reach]!;
    if (y > most) most = y;
    minute += reach;
  }
  const next = from + FIGURES;
  entries[next + AT] = minute;
  entries[next + SIGNED_C] = y;
  entries[next + STATE] = calling ? (y < low ? IDLE : CALLS) : y > high ? STARTS : IDLE;
  return most;
}

/** Counts the time from the entry to `to` that ends past the limit: whole minutes stretch by stretch, then a share. */
function countEntryBeyond(
  place: ThermostatPlace,
  course: ThermostatCourse,
  index: number,
  to: number,
  tally: BeyondLimit,
): void {
  const at = index * FIGURES;
  const running = course.powered && course.entries[at + STATE] !== IDLE;
  const { limit } = place.parameters;
  let y = course.entries[at + SIGNED_C]!;
  let from = course.entries[at + AT]!;
  const whole = Math.floor(to);
  while (from < whole && from === Math.floor(from)) {
    const hour = hourOf(place, from);
    const end = Math.min(whole, stretchEnd(place, hour, from));
    const heading = headingOf(place, running, hour);
    const after = afterMinutes(place, heading, y, end - from);
    if (y > limit || after > limit) countStretchBeyond(place, heading, y, from, end - from, tally);
    y = after;
    from = end;
  }
  if (to > from && afterShare(place, running, y, from, to) > limit) noteBeyond(tally, from, to - from);
}
