/** The thermostats of a run, as the units see them. MODEL.md §0, U9. */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { BLOCK_HOURS, now, type Run, type UnitRun } from './run.ts';
import { followTo, isRunning, meetPower, startsNow } from './step-thermostat.ts';
import { noteSwitching } from './switchings.ts';
import { callsAt, nextEntryAt } from './thermostat-course.ts';
import { copyThermostatState } from './thermostat-state.ts';
import { NEVER_MINUTE } from './thermostat-surroundings.ts';
import { noteThermostats } from './unmet.ts';

/** Where a block begins: power that came or went. */
export function meetThermostats(run: Run): void {
  if (!run.thermostatsMoved) return;
  const { thermostatStates: states, draw } = run;
  for (let i = 0; i < states.length; i++) {
    const powered = isFed(run, i);
    if (states[i]!.course.powered === powered) continue;
    keepFrom(run, i);
    meetPower(draw.thermostatPlaces[i]!, states[i]!, now(run), powered);
  }
  // Now, while each group still tells why it was off: a unit that comes back may trip at once, for another reason.
  if (run.anyMoves) noteThermostats(run);
  run.thermostatsMoved = false;
}

function isFed({ thermostatFeeds: feeds }: Run, i: number): boolean {
  return feeds[2 * i]! + feeds[2 * i + 1]! > 0;
}

/**
 * Readies unit `u` for a block to minute `to`: what runs on it now, and in its `ahead` what switches on the way.
 * Thermostats follow their own temperatures whatever their unit does, as long as it is up.
 */
export function readySwitchings(run: Run, u: number, to: number): void {
  const { minute } = run;
  const { ahead, settings } = run.units[u]!;
  if (ahead.to < to) {
    const calm = ahead.to > 0;
    tellRunning(run, u);
    collectSwitchings(
      run,
      u,
      calm ? Math.max(to, Math.min(minute + BLOCK_HOURS * MINUTES_PER_HOUR, run.draw.minutes)) : to,
    );
  }
  let { next } = ahead;
  while (next < ahead.count && ahead.at[next]! <= minute) next++;
  settings.runningW = next > 0 ? ahead.runningW[next - 1]! : ahead.firstRunningW;
  // A start counts in every part of its minute.
  settings.startW = 0;
  if (next > 0 && ahead.at[next - 1] === minute) settings.startW = ahead.startW[next - 1]!;
  else if (ahead.from === minute) settings.startW = ahead.firstStartW;
  ahead.next = next;
  ahead.nextBefore = next;
  ahead.runningBeforeW = settings.runningW;
  ahead.startBeforeW = settings.startW;
}

/** Takes what runs on the unit back to the block's beginning. */
export function takeSwitchingsBack({ ahead, settings }: UnitRun): void {
  ahead.next = ahead.nextBefore;
  settings.runningW = ahead.runningBeforeW;
  settings.startW = ahead.startBeforeW;
}

/** Which watts of thermostats run on unit `u` now, and the extra watts of those that start in this minute. */
function tellRunning(run: Run, u: number): void {
  const { minute, thermostatStates: states, thermostatFeeds: feeds } = run;
  const { ahead } = run.units[u]!;
  const time = now(run);
  let runningW = 0;
  let startW = 0;
  for (let i = 0; i < states.length; i++) {
    const share = feeds[2 * i + u]!;
    if (share === 0) continue;
    const state = states[i]!;
    const place = run.draw.thermostatPlaces[i]!;
    followTo(place, state, time);
    if (!isRunning(state)) continue;
    const { parameters } = place;
    runningW += share * parameters.runningW;
    if (share * parameters.startExtraW > startW && startsNow(state, minute))
      startW = share * parameters.startExtraW;
  }
  ahead.from = minute;
  ahead.firstRunningW = runningW;
  ahead.firstStartW = startW;
}

/** First minute after now at which one of those on unit `u` may switch. */
export function nextSwitching(run: Run, u: number): number {
  const { ahead } = run.units[u]!;
  readySwitchings(run, u, Math.min(run.minute + MINUTES_PER_HOUR, run.draw.minutes));
  return ahead.next < ahead.count ? ahead.at[ahead.next]! : NEVER_MINUTE;
}

/** Collects what changes for unit `u` after now and before minute `to`: the earliest of all on it, over and over. */
function collectSwitchings(run: Run, u: number, to: number): void {
  const { thermostatStates: states, thermostatFeeds: feeds, lookedAt } = run;
  const { who, entries, next } = lookedAt;
  const { thermostatPlaces: places } = run.draw;
  const { ahead } = run.units[u]!;
  ahead.count = 0;
  ahead.next = 0;
  ahead.to = to;
  let count = 0;
  for (let i = 0; i < states.length; i++) {
    if (feeds[2 * i + u] === 0) continue;
    const { course, entry } = states[i]!;
    who[count] = i;
    entries[count] = entry;
    next[count++] = nextEntryAt(places[i]!, course, entry);
  }
  let runningW = ahead.firstRunningW;
  let startW = ahead.firstStartW;
  let minute = run.minute;
  for (;;) {
    let first = 0;
    let at = to;
    for (let k = 0; k < count; k++) {
      if (next[k]! >= at) continue;
      first = k;
      at = next[k]!;
    }
    if (at === to) return;
    const i = who[first]!;
    const { course } = states[i]!;
    const place = places[i]!;
    const entry = ++entries[first]!;
    next[first] = nextEntryAt(place, course, entry);
    const calls = callsAt(course, entry);
    if (calls === callsAt(course, entry - 1)) continue;
    const { parameters } = place;
    const share = feeds[2 * i + u]!;
    if (at > minute) startW = 0;
    minute = at;
    if (calls) {
      runningW += share * parameters.runningW; // watts are kept to a 64th: the sum is exact
      if (share * parameters.startExtraW > startW) startW = share * parameters.startExtraW;
    } else runningW -= share * parameters.runningW;
    noteSwitching(ahead, minute, runningW, startW);
  }
}

/** Not even the first step could be carried: whose power came or went is as if it had not. */
export function takeThermostatsBack(run: Run): void {
  if (!run.anyMoves) return;
  run.thermostatsMoved = true;
  for (const { ahead } of run.units) ahead.to = 0;
  for (let i = 0; i < run.thermostatMoved.length; i++)
    if (run.thermostatMoved[i] === 1)
      copyThermostatState(run.thermostatsBefore[i]!, run.thermostatStates[i]!);
  keepThermostats(run);
}

function keepFrom(run: Run, i: number): void {
  if (run.thermostatMoved[i] === 1) return;
  copyThermostatState(run.thermostatStates[i]!, run.thermostatsBefore[i]!);
  run.thermostatMoved[i] = 1;
  run.anyMoves = true;
}

/** The block was carried: power that came or went before it did so for good. */
export function keepThermostats(run: Run): void {
  if (!run.anyMoves) return;
  run.thermostatMoved.fill(0);
  run.anyMoves = false;
}
