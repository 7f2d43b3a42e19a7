/** What the thermostats on one unit do from a moment on, in the order of time. MODEL.md §0, U9. */
import type { RunningChanges } from '../power/step-unit.ts';

export interface Switchings extends RunningChanges {
  count: number;
  next: number;
  at: Int32Array;
  runningW: Float64Array;
  startW: Float64Array;
  /** They are known from one minute to before the other; `to` is 0 once power came to or went from one of them. */
  from: number;
  to: number;
  /** What ran in the first minute, and the extra watts of what started in it. */
  firstRunningW: number;
  firstStartW: number;
  /** Where the unit stood in them as the present block began, and what ran then. */
  nextBefore: number;
  runningBeforeW: number;
  startBeforeW: number;
}

/** Room for an ordinary block; it grows as needed. */
const FIRST_ROOM = 32;

export function createSwitchings(): Switchings {
  return {
    count: 0,
    next: 0,
    at: new Int32Array(FIRST_ROOM),
    runningW: new Float64Array(FIRST_ROOM),
    startW: new Float64Array(FIRST_ROOM),
    from: 0,
    to: 0,
    firstRunningW: 0,
    firstStartW: 0,
    nextBefore: 0,
    runningBeforeW: 0,
    startBeforeW: 0,
  };
}

export function noteSwitching(
  switchings: Switchings,
  minute: number,
  runningW: number,
  startW: number,
): void {
  if (switchings.count === switchings.at.length) grow(switchings);
  const place = switchings.count++;
  switchings.at[place] = minute;
  switchings.runningW[place] = runningW;
  switchings.startW[place] = startW;
}

function grow(switchings: Switchings): void {
  const room = 2 * switchings.at.length;
  const { at, runningW, startW } = switchings;
  switchings.at = new Int32Array(room);
  switchings.at.set(at);
  switchings.runningW = new Float64Array(room);
  switchings.runningW.set(runningW);
  switchings.startW = new Float64Array(room);
  switchings.startW.set(startW);
}
