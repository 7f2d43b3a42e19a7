/**
 * The thermostats of a run. One that hangs on a single unit switches while that unit goes through its minutes; one on
 * both (240 V) switches only where a block begins. MODEL.md §0, U9.
 */
import { SET_BASE_W, SET_START_W } from '../power/step-unit.ts';
import { now, type Run } from './run.ts';
import { meetPower, passShare, switchUntil } from './step-thermostat.ts';
import { isRunning } from './thermostat-course.ts';
import {
  NEXT_AT,
  POWERED,
  RUNNING_W,
  START_AT,
  START_EXTRA_W,
  THERMOSTAT_STATE,
} from './thermostat-layout.ts';
import { NEVER_MINUTE } from './thermostat-surroundings.ts';
import { noteThermostats } from './unmet.ts';

/** Bits of what has happened to a thermostat in the present block: each is kept from before, to go back to. */
const POWER_MOVED = 1;
const SWITCHED = 2;

/** Where a block begins: power that came or went, and everything that is due. */
export function meetThermostats(run: Run): void {
  if (!run.thermostatsMoved && run.phase === 0 && run.sharedDue > run.minute) return;
  const { minute, thermostatStates: states } = run;
  const { thermostatPlaces: places } = run.draw;
  for (let i = 0; i < states.length; i++) {
    const state = states[i]!;
    const powered = isFed(run, i);
    if ((state[POWERED]! !== 0) !== powered) {
      keepFrom(run, i, run.beforePower, POWER_MOVED);
      switchUntil(places[i]!, state, minute);
      meetPower(places[i]!, state, minute, now(run), powered);
    }
    if (powered && state[NEXT_AT]! <= minute && run.phase === 0) switchUntil(places[i]!, state, minute + 1);
  }
  // Now, while each group still tells why it was off: a unit that comes back may trip at once, for another reason.
  if ((run.anyMoves & POWER_MOVED) !== 0) noteThermostats(run);
  run.thermostatsMoved = false;
  run.sharedDue = NEVER_MINUTE;
  for (let u = 0; u < run.units.length; u++) addUpThermostats(run, u, minute);
}

function isFed({ thermostatFeeds: feeds }: Run, i: number): boolean {
  return feeds[2 * i]! + feeds[2 * i + 1]! > 0;
}

/** Watts of those on unit `u` that run, the extra watts of those that start in `minute`, and when the next switches. */
function addUpThermostats(run: Run, u: number, minute: number): void {
  const { thermostatStates: states, thermostatFeeds: feeds } = run;
  const unit = run.units[u]!;
  let runningW = 0;
  let startW = 0;
  let due = NEVER_MINUTE;
  for (let i = 0; i < states.length; i++) {
    const share = feeds[2 * i + u]!;
    if (share === 0) continue;
    const state = states[i]!;
    const next = state[NEXT_AT]!;
    if (share < 1) run.sharedDue = Math.min(run.sharedDue, next);
    else if (next < due) due = next;
    if (!isRunning(state)) continue;
    const { parameters } = run.draw.thermostatPlaces[i]!;
    runningW += share * parameters[RUNNING_W]!;
    if (state[START_AT] === minute) startW = Math.max(startW, share * parameters[START_EXTRA_W]!);
  }
  unit.thermostatDue = due;
  unit.runningW = runningW;
  unit.settings[SET_START_W] = startW;
  unit.settings[SET_BASE_W] = unit.hourBaseW + runningW;
}

/** Switches those of unit `u` alone that are due at `minute`. */
export function switchThermostats(run: Run, u: number, minute: number): void {
  const { thermostatStates: states, thermostatFeeds: feeds } = run;
  for (let i = 0; i < states.length; i++) {
    if (feeds[2 * i + u] !== 1 || states[i]![NEXT_AT]! > minute) continue;
    keepFrom(run, i, run.beforeSwitch, SWITCHED);
    switchUntil(run.draw.thermostatPlaces[i]!, states[i]!, minute + 1);
  }
  addUpThermostats(run, u, minute);
}

/** Takes those that unit `u` switched in this block back to the block's beginning. */
export function unswitchThermostats(run: Run, u: number): void {
  for (let i = 0; i < run.thermostatMoves.length; i++)
    if (run.thermostatFeeds[2 * i + u]! > 0) takeBack(run, i, run.beforeSwitch, SWITCHED);
  addUpThermostats(run, u, run.minute);
}

/** Not even the first step could be carried: whose power came or went is as if it had not. */
export function takeThermostatsBack(run: Run): void {
  run.thermostatsMoved = true;
  for (let i = 0; i < run.thermostatMoves.length; i++) {
    takeBack(run, i, run.beforeSwitch, SWITCHED);
    takeBack(run, i, run.beforePower, POWER_MOVED);
  }
  run.anyMoves = 0;
}

function keepFrom(run: Run, i: number, into: Float64Array, move: number): void {
  if ((run.thermostatMoves[i]! & move) !== 0) return;
  const state = run.thermostatStates[i]!;
  for (let k = 0; k < THERMOSTAT_STATE; k++) into[i * THERMOSTAT_STATE + k] = state[k]!;
  run.thermostatMoves[i]! |= move;
  run.anyMoves |= move;
}

function takeBack(run: Run, i: number, from: Float64Array, move: number): void {
  if ((run.thermostatMoves[i]! & move) === 0) return;
  const state = run.thermostatStates[i]!;
  for (let k = 0; k < THERMOSTAT_STATE; k++) state[k] = from[i * THERMOSTAT_STATE + k]!;
  run.thermostatMoves[i]! &= ~move;
}

/** The block was carried: what happened in it stands. */
export function keepThermostats(run: Run): void {
  if (run.anyMoves === 0) return;
  for (let i = 0; i < run.thermostatMoves.length; i++) run.thermostatMoves[i] = 0;
  run.anyMoves = 0;
}

/** Lives through `dt` of a minute, up to `timeAfter`. */
export function passThermostats(run: Run, dt: number, timeAfter: number): void {
  const { thermostatStates: states, draw } = run;
  for (let i = 0; i < states.length; i++) {
    const place = draw.thermostatPlaces[i]!;
    if (run.phase === 0) switchUntil(place, states[i]!, run.minute + 1);
    passShare(place, states[i]!, now(run), dt, timeAfter);
  }
  run.thermostatsMoved = true;
  keepThermostats(run);
  noteThermostats(run);
}

/** Brings those without power, which nobody looks at on the way, up to the present minute. */
export function catchUp(run: Run): void {
  const { thermostatStates: states, draw } = run;
  for (let i = 0; i < states.length; i++) switchUntil(draw.thermostatPlaces[i]!, states[i]!, run.minute);
  noteThermostats(run);
}
