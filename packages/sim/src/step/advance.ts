/**
 * The minute loop. MODEL.md §0 gives the order of one minute; this file is that order.
 *
 * Between two moments at which anything but a thermostat can switch, every unit goes through its minutes on its own,
 * some hours at a time. When something stops a unit on the way, the other is taken back to that minute.
 */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { SOURCE_OVERLOAD } from '../power/source-feed.ts';
import { CROSSED, DONE, EMPTY, selfDischarge, stepShareUntilEmpty } from '../power/step-unit.ts';
import { thinkAgainLevels } from '../shedding/control.ts';
import { applyPower } from './apply-power.ts';
import { decideIfDue, think } from './decide.ts';
import { decideSources, tripSource } from './decide-sources.ts';
import {
  keepThermostats,
  meetThermostats,
  nextSwitching,
  readySwitchings,
  takeThermostatsBack,
} from './run-thermostats.ts';
import { BLOCK_HOURS, EMPTY_BANK, now, ON, type Run } from './run.ts';
import { narrowToGenerator, sharesGenerator, sourcesBreak, type SourcesRun } from './sources-run.ts';
import { askedW, isFed, offeredW, readyFeeds } from './step-fed-unit.ts';
import { floorWmin, restartAboveFloorWmin, restartRecoveredUnits, stopUnit } from './unit-events.ts';
import { stepUnits, takeUnitBack } from './unit-steps.ts';

/** A phase this close to 1 is the minute's end: rounding of shares. */
const PHASE_END = 1 - 1e-9;

/**
 * Lives the run through to minute `to` (whole, at most the horizon). Stopping anywhere and going on gives the same bits.
 *
 * @param onStretch called after each stretch, with the moment at which it began: from then to now, power neither came to
 *   nor went from any circuit. A run that stands inside a block must not be given one: the block begins anew.
 */
export function advance(run: Run, to: number, onStretch?: (from: number) => void): void {
  if (run.cut && to > run.minute) goOnFromCut(run, to);
  while (run.minute < to) {
    if (run.phase === 0) {
      if (beginHour(run) && leakedThroughLevel(run) && think(run)) run.changed = true;
      if (run.sources !== undefined && decideSources(run, run.sources)) run.changed = true;
      if (decideIfDue(run)) run.changed = true;
    }
    if (run.changed) {
      applyPower(run);
      run.changed = false;
      run.unsettled = true;
    }
    if (run.unsettled) settle(run);
    meetThermostats(run);
    run.blockFrom = run.minute;
    run.blockTo = Math.min(run.draw.minutes, nextBreak(run));
    endAtLastHour(run, to);
    const from = now(run);
    stepBlock(run, to);
    if (onStretch !== undefined && now(run) > from) onStretch(from);
  }
}

/**
 * Where somebody looked on the way, the block is lived through anew from its beginning, so that looking changes no bit
 * of it: what many minutes come to at once depends in its last digit on where they begin.
 */
function goOnFromCut(run: Run, to: number): void {
  run.minute = run.blockFrom;
  endAtLastHour(run, to);
  for (let u = 0; u < run.units.length; u++) takeUnitBack(run, u);
  stepBlock(run, to);
}

/** A block that goes on beyond `to` ends at the last full hour before: one that does changes no bit either. */
function endAtLastHour(run: Run, to: number): void {
  const hour = to - (to % MINUTES_PER_HOUR);
  if (to < run.blockTo && hour > run.minute) run.blockTo = hour;
}

/** At each full hour every bank loses its self-discharge. False between full hours. */
function beginHour(run: Run): boolean {
  const hour = (run.minute / MINUTES_PER_HOUR) | 0;
  if (hour === run.hour) return false;
  if (hour > 0) for (const { parameters, state } of run.units) selfDischarge(parameters, state);
  run.hour = hour;
  if (run.sources !== undefined) run.unsettled = true; // a generator waits for a level on this side of the charge
  return true;
}

/** Self-discharge has carried a bank below a level at which the switch thinks again. */
function leakedThroughLevel(run: Run): boolean {
  if (!run.plan.strategy.bySwitch) return false;
  for (const { state, settings } of run.units) if (state.storedWmin < settings.downWmin) return true;
  return false;
}

/** Tells each unit what it is doing and at which bank level to report. */
function settle(run: Run): void {
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    const { settings, parameters } = unit;
    const on = unit.mode === ON;
    const capacity = parameters.capacityWmin;
    const charge = unit.state.storedWmin / capacity;
    thinkAgainLevels(run.plan, run.control, u, charge, run.levels);
    if (run.sources !== undefined) narrowToGenerator(run.sources, u, charge, run.levels);
    settings.on = on;
    settings.idleW = on ? parameters.idleW : parameters.standbyW;
    settings.downWmin = run.levels[0]! * capacity;
    settings.upWmin = run.levels[1]! * capacity;
    settings.restartAboveFloorWmin = unit.mode === EMPTY_BANK ? restartAboveFloorWmin(run, u) : Infinity;
    settings.floorless = false;
  }
  run.unsettled = false;
}

/** First minute after now before which nothing is due. */
function nextBreak(run: Run): number {
  if (run.phase > 0 || run.stopAt === run.minute) return run.minute + 1;
  const hours = run.sources === undefined ? BLOCK_HOURS : 1;
  const hourEnd = (Math.floor(run.minute / MINUTES_PER_HOUR) + hours) * MINUTES_PER_HOUR;
  let next = Math.min(hourEnd, run.nextDecision, run.holdUntil);
  for (const unit of run.units) if (unit.resetAt < next) next = unit.resetAt;
  if (run.sources !== undefined) next = Math.min(next, nextOfSources(run, run.sources));
  return Math.max(next, run.minute + 1);
}

/** When a source is due; where two units share a generator also when a thermostat on either switches. */
function nextOfSources(run: Run, sources: SourcesRun): number {
  let next = sourcesBreak(sources, run.minute);
  if (!sharesGenerator(sources)) return next;
  for (let u = 0; u < run.units.length; u++) next = Math.min(next, nextSwitching(run, u));
  return next;
}

/** Steps every unit through the block, to minute `to` at most, as far as nothing stops one; then deals with what did. */
function stepBlock(run: Run, to: number): void {
  const dt = 1 - run.phase;
  const until = Math.min(to, run.blockTo);
  readyUnits(run, until);
  const done = stepUnits(run, until - run.minute, dt);
  if (done === 0) {
    takeThermostatsBack(run);
    stopUnits(run, dt);
    return;
  }
  run.cut = run.minute + done === until && until < run.blockTo && !isAnyStopped(run, done);
  if (!run.cut) keepThermostats(run);
  run.minute += done;
  run.hour = ((run.minute - 1) / MINUTES_PER_HOUR) | 0;
  run.phase = 0;
  if (run.cut || !isAnyStopped(run, done)) return;
  if (!aLevelWasCrossed(run, done)) run.stopAt = run.minute;
  else if (run.minute < run.draw.minutes) levelCrossed(run);
}

/** What thermostats do on each unit up to minute `until`, and what sources give it. */
function readyUnits(run: Run, until: number): void {
  for (let u = 0; u < run.units.length; u++) readySwitchings(run, u, until);
  if (run.sources !== undefined) readyFeeds(run, run.sources, until - run.minute);
}

/** Some unit ended otherwise than by running out of steps, after `done` of them: it crossed a level in the last, or stops in the next. */
function isAnyStopped({ units }: Run, done: number): boolean {
  for (let u = 0; u < units.length; u++) if (units[u]!.ended !== DONE && units[u]!.steps <= done) return true;
  return false;
}

function aLevelWasCrossed(run: Run, done: number): boolean {
  for (let u = 0; u < run.units.length; u++)
    if (run.units[u]!.steps === done && run.units[u]!.ended === CROSSED) return true;
  return false;
}

/** What stopped units at the present step: trips at once; an empty bank after the share of the step it can carry. */
function stopUnits(run: Run, dt: number): void {
  if (!tripUnits(run)) emptyUnits(run, dt);
  run.changed = true;
  if (run.plan.strategy.bySwitch && run.minute < run.draw.minutes) think(run);
}

function tripUnits(run: Run): boolean {
  let tripped = false;
  let sourceTripped = false;
  for (let u = 0; u < run.units.length; u++) {
    const { steps, ended } = run.units[u]!;
    if (steps > 0 || ended === EMPTY) continue;
    if (ended === SOURCE_OVERLOAD) sourceTripped = true;
    else stopUnit(run, u, ended);
    tripped = true;
  }
  if (sourceTripped) tripSource(run, run.sources!);
  return tripped;
}

function emptyUnits(run: Run, dt: number): void {
  const shares = run.units.map((unit, u) => (unit.steps === 0 ? shareUntilEmpty(run, u) : Infinity));
  const share = Math.min(...shares);
  if (share > 0) stepShare(run, share * dt);
  shares.forEach((each, u) => {
    if (each <= share) stopUnit(run, u, EMPTY);
  });
}

function shareUntilEmpty(run: Run, u: number): number {
  const { parameters, state, settings } = run.units[u]!;
  return stepShareUntilEmpty(
    parameters,
    state.storedWmin,
    floorWmin(run, u),
    settings.idleW,
    run.draw.solar[u]!.usableW[run.minute]! + (isFed(run, u) ? offeredW(run, u) : 0),
    askedW(run, u, run.minute),
    settings.dt,
  );
}

/** Carries everything `dt` of a minute further, to the moment at which the first bank reaches its floor. */
function stepShare(run: Run, dt: number): void {
  const phase = run.phase + dt;
  const wholeMinute = phase >= PHASE_END;
  meetThermostats(run);
  readyUnits(run, run.minute + 1);
  for (const { settings } of run.units) {
    settings.floorless = settings.on;
    settings.downWmin = -Infinity;
    settings.upWmin = settings.restartAboveFloorWmin = Infinity;
  }
  stepUnits(run, 1, dt);
  keepThermostats(run);
  if (wholeMinute) run.minute++;
  run.phase = wholeMinute ? 0 : phase;
  run.unsettled = true;
}

/** A bank crossed a level that somebody waits for: a stopped unit may come back, a switch thinks again. */
function levelCrossed(run: Run): void {
  run.unsettled = true;
  if (restartRecoveredUnits(run)) run.changed = true;
  if (run.plan.strategy.bySwitch && think(run)) run.changed = true;
}
