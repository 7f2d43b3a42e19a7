/**
 * The thermostats of a run. One that hangs on a single unit switches while that unit goes through its minutes; one on
 * both (240 V) switches only where a block begins. MODEL.md §0, U9.
 */
import { now, type Run } from './run.ts';
import { meetPower, passShare, switchOrGoOn, switchUntil } from './step-thermostat.ts';
import { noteSwitching, type Switchings } from './switchings.ts';
import { isRunning } from './thermostat-course.ts';
import { copyThermostatState, type ThermostatState } from './thermostat-state.ts';
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
    if (state.powered !== powered) {
      keepFrom(run, i, run.beforePower, POWER_MOVED);
      switchUntil(places[i]!, state, minute);
      meetPower(places[i]!, state, minute, now(run), powered);
    }
    if (powered && state.nextAt <= minute && run.phase === 0) switchUntil(places[i]!, state, minute + 1);
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
export function addUpThermostats(run: Run, u: number, minute: number): void {
  const { thermostatStates: states, thermostatFeeds: feeds } = run;
  const unit = run.units[u]!;
  let runningW = 0;
  let startW = 0;
  let due = NEVER_MINUTE;
  for (let i = 0; i < states.length; i++) {
    const share = feeds[2 * i + u]!;
    if (share === 0) continue;
    const state = states[i]!;
    const next = state.nextAt;
    if (share < 1) run.sharedDue = Math.min(run.sharedDue, next);
    else if (next < due) due = next;
    if (!isRunning(state)) continue;
    const { parameters } = run.draw.thermostatPlaces[i]!;
    runningW += share * parameters.runningW;
    if (state.startAt === minute) startW = Math.max(startW, share * parameters.startExtraW);
  }
  unit.thermostatDue = due;
  unit.settings.runningW = runningW;
  unit.settings.startW = startW;
}

/**
 * Lets those of unit `u` alone go through everything that is due before minute `to`, and collects in the draw's
 * `switchings` what that changes for the unit: they follow their own temperatures whatever it does, as long as it is up.
 */
export function switchThrough(run: Run, u: number, to: number): void {
  const { thermostatStates: states, thermostatFeeds: feeds } = run;
  const { switchings, thermostatPlaces: places } = run.draw;
  switchings.count = 0;
  for (let i = 0; i < states.length; i++) {
    const state = states[i]!;
    if (feeds[2 * i + u]! === 0) continue;
    switchings.runs[i] = isRunning(state) ? 1 : 0;
    if (feeds[2 * i + u] !== 1 || state.nextAt >= to) continue;
    keepFrom(run, i, run.beforeSwitch, SWITCHED);
    while (state.nextAt < to) {
      const { calling, nextAt: minute } = state;
      switchOrGoOn(places[i]!, state);
      if (state.calling !== calling) noteSwitching(switchings, minute, i);
    }
  }
  if (switchings.count > 0) addUpSwitchings(run, u, switchings);
}

/** What runs on the unit after each switching, and what starts with it. */
function addUpSwitchings(run: Run, u: number, switchings: Switchings): void {
  const { thermostatFeeds: feeds } = run;
  const { thermostatPlaces: places } = run.draw;
  const { count, at, who, runs, runningW, startW } = switchings;
  let minute = run.minute;
  let starting = run.units[u]!.settings.startW;
  for (let e = 0; e < count; e++) {
    if (at[e]! > minute) starting = 0;
    minute = at[e]!;
    const i = who[e]!;
    runs[i] = 1 - runs[i]!;
    if (runs[i] === 1) starting = Math.max(starting, places[i]!.parameters.startExtraW);
    startW[e] = starting;
    let watts = 0;
    for (let j = 0; j < places.length; j++) {
      const share = feeds[2 * j + u]!;
      if (share > 0 && runs[j] === 1) watts += share * places[j]!.parameters.runningW;
    }
    runningW[e] = watts;
  }
}

/** Switches those of unit `u` alone that are due at `minute`. */
export function switchThermostats(run: Run, u: number, minute: number): void {
  const { thermostatStates: states, thermostatFeeds: feeds } = run;
  for (let i = 0; i < states.length; i++) {
    if (feeds[2 * i + u] !== 1 || states[i]!.nextAt > minute) continue;
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

function keepFrom(run: Run, i: number, into: readonly ThermostatState[], move: number): void {
  if ((run.thermostatMoves[i]! & move) !== 0) return;
  copyThermostatState(run.thermostatStates[i]!, into[i]!);
  run.thermostatMoves[i]! |= move;
  run.anyMoves |= move;
}

function takeBack(run: Run, i: number, from: readonly ThermostatState[], move: number): void {
  if ((run.thermostatMoves[i]! & move) === 0) return;
  copyThermostatState(from[i]!, run.thermostatStates[i]!);
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
