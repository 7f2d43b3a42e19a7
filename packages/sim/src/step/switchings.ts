/** What the thermostats that hang on one unit alone do in a block of minutes, in the order of time. MODEL.md §0, U9. */
import type { RunningChanges } from '../power/step-unit.ts';

export interface Switchings extends RunningChanges {
  count: number;
  at: Int32Array;
  runningW: Float64Array;
  startW: Float64Array;
  /** Which thermostat, while they are collected. */
  who: Int32Array;
  /** Per thermostat, 1 while it runs. */
  readonly runs: Uint8Array;
}

/** Room for an ordinary block; it grows as needed. */
const FIRST_ROOM = 32;

export function createSwitchings(thermostats: number): Switchings {
  return {
    count: 0,
    at: new Int32Array(FIRST_ROOM),
    runningW: new Float64Array(FIRST_ROOM),
    startW: new Float64Array(FIRST_ROOM),
    who: new Int32Array(FIRST_ROOM),
    runs: new Uint8Array(thermostats),
  };
}

/** Puts in that thermostat `who` switches at `minute`, after everything at that minute and before what comes later. */
export function noteSwitching(switchings: Switchings, minute: number, who: number): void {
  if (switchings.count === switchings.at.length) grow(switchings);
  const { at, who: whose } = switchings;
  let place = switchings.count++;
  for (; place > 0 && at[place - 1]! > minute; place--) {
    at[place] = at[place - 1]!;
    whose[place] = whose[place - 1]!;
  }
  at[place] = minute;
  whose[place] = who;
}

function grow(switchings: Switchings): void {
  const room = 2 * switchings.at.length;
  const { at, who } = switchings;
  switchings.at = new Int32Array(room);
  switchings.at.set(at);
  switchings.who = new Int32Array(room);
  switchings.who.set(who);
  switchings.runningW = new Float64Array(room);
  switchings.startW = new Float64Array(room);
}
