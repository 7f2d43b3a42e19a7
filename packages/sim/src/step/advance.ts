/**
 * The minute loop. MODEL.md §0 gives the order of one minute; this file is that order.
 *
 * Between two moments at which anything can switch, every unit and thermostat goes through its minutes on its own,
 * an hour at most at a time. When something stops a unit on the way, the others are taken back to that minute.
 */
import { SOURCE_OVERLOAD } from '../power/source-feed.ts';
import { stepAtOnce } from '../power/step-at-once.ts';
import {
  CROSSED,
  DONE,
  EMPTY,
  mayExceedRating,
  SELF_DISCHARGED_WMIN,
  SET_BASE_W,
  SET_CHARGE_LIMIT_W,
  SET_DOWN_WMIN,
  SET_DT,
  SET_FLOOR_WMIN,
  SET_IDLE_W,
  SET_LEAST_W,
  SET_LOAD_FROM,
  SET_MOST_W,
  SET_ON,
  SET_PEAK_START_W,
  SET_SOLAR_LEAST_W,
  SET_SOLAR_MOST_W,
  SET_START_W,
  SET_UP_WMIN,
  SET_WATCH,
  stepShareUntilEmpty,
  stepUnit,
  STORED_WMIN,
  UNIT_STATE,
} from '../power/step-unit.ts';
import { CAPACITY_WMIN, IDLE_W, KEPT_PER_HOUR, STANDBY_W } from '../power/unit-parameters.ts';
import { thinkAgainLevels } from '../shedding/control.ts';
import { applyPower } from './apply-power.ts';
import { blockOf, MINUTES_PER_HOUR, readyStarts } from './hour-loads.ts';
import { decideIfDue, think } from './decide.ts';
import { decideSources, tripSource } from './decide-sources.ts';
import { BLOCK_MINUTES, EMPTY_BANK, ON, type Run, type UnitRun } from './run.ts';
import {
  catchUp,
  keepThermostats,
  meetThermostats,
  passThermostats,
  switchThermostats,
  takeThermostatsBack,
  unswitchThermostats,
} from './run-thermostats.ts';
import { narrowToGenerator, sharesGenerator, sourcesBreak, type SourcesRun } from './sources-run.ts';
import { isFed, offeredW, readyFeeds, saveSums, stepFed, takeSumsBack } from './step-fed-unit.ts';
import { restartRecoveredUnits, restartWmin, stopUnit } from './unit-events.ts';

/** A phase this close to 1 is the minute's end: rounding of shares. */
const PHASE_END = 1 - 1e-9;

/** Lives the run through to minute `to` (whole, at most the horizon). Stopping anywhere and going on gives the same bits. */
export function advance(run: Run, to: number): void {
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
    stepBlock(run, to);
  }
  catchUp(run);
}

/**
 * Where somebody looked on the way, the block is lived through anew from its beginning, so that looking changes no bit
 * of it: what many minutes come to at once depends in its last digit on where they begin.
 */
function goOnFromCut(run: Run, to: number): void {
  run.minute = run.blockFrom;
  for (let u = 0; u < run.units.length; u++) takeUnitBack(run, u);
  stepBlock(run, to);
}

/** At each full hour: self-discharge, and what the cold allows in this hour. False between full hours. */
function beginHour(run: Run): boolean {
  const hour = Math.floor(run.minute / 60);
  if (hour === run.hour) return false;
  for (let u = 0; u < run.units.length; u++) {
    const { state, settings, parameters } = run.units[u]!;
    if (hour > 0) {
      const kept = state[STORED_WMIN]! * parameters[KEPT_PER_HOUR]!;
      state[SELF_DISCHARGED_WMIN] = state[SELF_DISCHARGED_WMIN]! + (state[STORED_WMIN]! - kept);
      state[STORED_WMIN] = kept;
    }
    settings[SET_FLOOR_WMIN] = run.draw.floorWmin[u]![hour]!;
    settings[SET_CHARGE_LIMIT_W] = run.draw.chargeLimitW[u]![hour]!;
  }
  run.hour = hour;
  run.unsettled = true;
  return true;
}

/** Self-discharge has carried a bank below a level at which the switch thinks again. */
function leakedThroughLevel(run: Run): boolean {
  if (!run.plan.strategy.bySwitch) return false;
  for (const { state, settings } of run.units)
    if (state[STORED_WMIN]! < settings[SET_DOWN_WMIN]!) return true;
  return false;
}

/** Tells each unit what it is doing, what hangs on it and at which bank level to report. */
function settle(run: Run): void {
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    const { settings, parameters } = unit;
    const on = unit.mode === ON;
    const capacity = parameters[CAPACITY_WMIN]!;
    const charge = unit.state[STORED_WMIN]! / capacity;
    thinkAgainLevels(run.plan, run.control, u, charge, run.levels);
    if (run.sources !== undefined) narrowToGenerator(run.sources, u, charge, run.levels);
    settings[SET_ON] = on ? 1 : 0;
    settings[SET_IDLE_W] = parameters[on ? IDLE_W : STANDBY_W]!;
    settings[SET_DOWN_WMIN] = run.levels[0]! * capacity;
    settings[SET_UP_WMIN] = Math.min(
      run.levels[1]! * capacity,
      unit.mode === EMPTY_BANK ? restartWmin(run, u) : Infinity,
    );
  }
  readHourLoads(run);
  run.unsettled = false;
}

/** Finds the sums of what hangs on each unit in the present hour; watches ratings only if some minute could exceed one. */
function readHourLoads(run: Run): void {
  const { units, draw, hour } = run;
  for (let u = 0; u < units.length; u++) {
    const unit = units[u]!;
    const { parameters, settings, pattern } = unit;
    const block = blockOf(draw, pattern, hour);
    const loads = draw.hourLoads;
    unit.hourBlock = block;
    unit.hourBaseW = loads.baseW[block]!;
    settings[SET_BASE_W] = unit.hourBaseW + unit.runningW;
    settings[SET_LEAST_W] = loads.leastW[block]!;
    settings[SET_MOST_W] = loads.mostW[block]!;
    settings[SET_SOLAR_LEAST_W] = draw.solar[u]!.sums.leastW[hour]!;
    settings[SET_SOLAR_MOST_W] = draw.solar[u]!.sums.mostW[hour]!;
    const mostW = unit.thermostatW + unit.hourBaseW + loads.mostW[block]!;
    const mostStartW = mostW + Math.max(unit.thermostatStartW, loads.peakExtraW[block]!);
    const watch = mayExceedRating(parameters, settings[SET_IDLE_W]!, mostW, mostStartW);
    settings[SET_WATCH] = watch ? 1 : 0;
    if (!watch && !isFed(run, u)) continue;
    readyStarts(draw, pattern, hour);
    settings[SET_PEAK_START_W] = loads.peakStartW[block]!;
  }
}

/** First minute after now before which nothing is due. */
function nextBreak(run: Run): number {
  if (run.phase > 0) return run.minute + 1;
  const hourEnd = (Math.floor(run.minute / BLOCK_MINUTES) + 1) * BLOCK_MINUTES;
  let next = Math.min(hourEnd, run.nextDecision, run.holdUntil, run.sharedDue);
  for (const unit of run.units) if (unit.resetAt < next) next = unit.resetAt;
  if (run.sources !== undefined) next = Math.min(next, nextOfSources(run, run.sources));
  return Math.max(next, run.minute + 1);
}

/** When a source is due; where two units share a generator also when a thermostat on either switches. */
function nextOfSources(run: Run, sources: SourcesRun): number {
  let next = sourcesBreak(sources, run.minute);
  if (!sharesGenerator(sources)) return next;
  for (let u = 0; u < run.units.length; u++) {
    if (run.units[u]!.thermostatDue <= run.minute) switchThermostats(run, u, run.minute);
    next = Math.min(next, run.units[u]!.thermostatDue);
  }
  return next;
}

/** Steps every unit through the block, to minute `to` at most, as far as nothing stops one; then deals with what did. */
function stepBlock(run: Run, to: number): void {
  const dt = 1 - run.phase;
  const until = Math.min(to, run.blockTo);
  if (run.sources !== undefined) readyFeeds(run, run.sources, until - run.minute);
  const done = stepUnits(run, until - run.minute, dt);
  if (done === 0) {
    takeThermostatsBack(run);
    stopUnits(run, dt);
    return;
  }
  run.cut = run.minute + done === until && until < run.blockTo && !isAnyStopped(run, done);
  if (dt < 1) passThermostats(run, dt, run.minute + 1);
  else if (!run.cut) keepThermostats(run);
  run.minute += done;
  run.phase = 0;
  if (run.cut) return;
  if (run.minute < run.draw.minutes && aLevelWasCrossed(run, done)) levelCrossed(run);
}

/**
 * Every unit on its own through the block; returns the steps that all of them got through, which is where all then
 * stand. A unit that stops at the first step leaves the others tried on that step, so that nobody's order matters.
 */
function stepUnits(run: Run, count: number, dt: number): number {
  let done = count;
  for (let u = 0; u < run.units.length; u++) {
    const { state, saved } = run.units[u]!;
    for (let i = 0; i < UNIT_STATE; i++) saved[i] = state[i]!;
    if (run.sources !== undefined) saveSums(run.sources, u);
    stepOne(run, u, Math.max(1, done), dt);
    done = Math.min(done, run.units[u]!.steps);
  }
  for (let u = 0; u < run.units.length; u++) if (run.units[u]!.steps !== done) stepAgain(run, u, done, dt);
  return done;
}

/** Takes the unit back to the block's beginning and through `count` steps; how it ended the first time still counts. */
function stepAgain(run: Run, u: number, count: number, dt: number): void {
  const unit = run.units[u]!;
  const { steps, ended } = unit;
  takeUnitBack(run, u);
  if (count > 0) stepOne(run, u, count, dt);
  unit.steps = steps;
  unit.ended = ended;
}

/** Takes the unit, and the thermostats that it switched, back to the block's beginning. */
function takeUnitBack(run: Run, u: number): void {
  const { state, saved } = run.units[u]!;
  for (let i = 0; i < UNIT_STATE; i++) state[i] = saved[i]!;
  if (run.sources !== undefined) takeSumsBack(run.sources, u);
  unswitchThermostats(run, u);
}

/** One unit through `count` steps, or until it stops: from one switching of its thermostats to the next. */
function stepOne(run: Run, u: number, count: number, dt: number): void {
  const { draw } = run;
  const unit = run.units[u]!;
  const { settings, event } = unit;
  const { usableW } = draw.solar[u]!;
  const { watts, startExtraW, sumW, sumW2 } = draw.hourLoads;
  const { wminBefore } = draw.solar[u]!.sums;
  const from = loadFrom(run, unit);
  const sumsFrom = from + unit.hourBlock; // one more sum than minutes in each block
  const fed = isFed(run, u);
  settings[SET_DT] = dt;
  let done = 0;
  do {
    const minute = run.minute + done;
    if (unit.thermostatDue <= minute) switchThermostats(run, u, minute);
    settings[SET_LOAD_FROM] = from + done;
    const some = Math.min(count - done, unit.thermostatDue - minute);
    let steps = some;
    if (fed) steps = stepFed(run, run.sources!, u, minute, some);
    else if (
      dt < 1 ||
      !stepAtOnce(
        unit.parameters,
        unit.state,
        settings,
        wminBefore,
        minute,
        sumW,
        sumW2,
        sumsFrom + done,
        some,
        event,
      )
    )
      steps = stepUnit(
        unit.parameters,
        unit.state,
        settings,
        usableW,
        minute,
        watts,
        startExtraW,
        some,
        event,
      );
    if (steps > 0) settings[SET_START_W] = 0;
    done += steps;
  } while (event[0] === DONE && done < count);
  unit.steps = done;
  unit.ended = event[0]!;
}

/** Where the unit's loads of the present minute are. */
function loadFrom(run: Run, unit: UnitRun): number {
  return (unit.hourBlock - run.hour) * MINUTES_PER_HOUR + run.minute;
}

/** Some unit ended otherwise than by running out of steps, after `done` of them. */
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
  const unit = run.units[u]!;
  const loadW = unit.settings[SET_BASE_W]! + run.draw.hourLoads.watts[loadFrom(run, unit)]!;
  return stepShareUntilEmpty(
    unit.parameters,
    unit.state,
    unit.settings,
    run.draw.solar[u]!.usableW[run.minute]! + (isFed(run, u) ? offeredW(run, u) : 0),
    loadW,
  );
}

/** Carries everything `dt` of a minute further, to the moment at which the first bank reaches its floor. */
function stepShare(run: Run, dt: number): void {
  const phase = run.phase + dt;
  const wholeMinute = phase >= PHASE_END;
  meetThermostats(run);
  if (run.sources !== undefined) readyFeeds(run, run.sources, 1);
  for (const { settings } of run.units) {
    if (settings[SET_ON]! !== 0) settings[SET_FLOOR_WMIN] = -Infinity;
    settings[SET_DOWN_WMIN] = -Infinity;
    settings[SET_UP_WMIN] = Infinity;
  }
  stepUnits(run, 1, dt);
  run.units.forEach((unit, u) => {
    unit.settings[SET_FLOOR_WMIN] = run.draw.floorWmin[u]![run.hour]!;
  });
  passThermostats(run, dt, wholeMinute ? run.minute + 1 : run.minute + phase);
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
