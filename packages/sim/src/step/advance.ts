/**
 * The minute loop. MODEL.md §0 gives the order of one minute; this file is that order.
 *
 * Between two moments at which anything can switch, every unit and thermostat goes through its minutes on its own,
 * an hour at most at a time. When something stops a unit on the way, the others are taken back to that minute.
 */
import {
  CROSSED,
  EMPTY,
  SELF_DISCHARGED_WMIN,
  SET_BASE_W,
  SET_CHARGE_LIMIT_W,
  SET_DOWN_WMIN,
  SET_DT,
  SET_FLOOR_WMIN,
  SET_IDLE_W,
  SET_ON,
  SET_UP_WMIN,
  stepShareUntilEmpty,
  stepUnit,
  STORED_WMIN,
  UNIT_STATE,
} from '../power/step-unit.ts';
import { CAPACITY_WMIN, IDLE_W, KEPT_PER_HOUR, STANDBY_W } from '../power/unit-parameters.ts';
import { thinkAgainLevels } from '../shedding/control.ts';
import { applyPower } from './apply-power.ts';
import { decideIfDue, think } from './decide.ts';
import { BLOCK_MINUTES, EMPTY_BANK, now, ON, type Run, type UnitRun } from './run.ts';
import { isRunning, staysAsItIs, stepThermostat, stepThermostatShare } from './step-thermostat.ts';
import { RUNNING_W, THERMOSTAT_PARAMETERS, THERMOSTAT_STATE } from './thermostat-layout.ts';
import { restartRecoveredUnits, restartWmin, stopUnit } from './unit-events.ts';
import { loadUnit } from './unit-loads.ts';
import { noteThermostats } from './unmet.ts';

/** A phase this close to 1 is the minute's end: rounding of shares. */
const PHASE_END = 1 - 1e-9;

/** Lives the run through to minute `to` (whole, at most the horizon). Stopping anywhere and going on gives the same bits. */
export function advance(run: Run, to: number): void {
  while (run.minute < to) {
    if (run.phase === 0) {
      if (beginHour(run) && leakedThroughLevel(run) && think(run)) run.changed = true;
      if (decideIfDue(run)) run.changed = true;
    }
    if (run.changed) applyPower(run);
    run.changed = false;
    settle(run);
    stepBlock(run, Math.min(to, nextBreak(run)));
  }
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
  return true;
}

/** Self-discharge has carried a bank below a level at which the switch thinks again. */
function leakedThroughLevel(run: Run): boolean {
  if (!run.plan.strategy.bySwitch) return false;
  for (const { state, settings } of run.units)
    if (state[STORED_WMIN]! < settings[SET_DOWN_WMIN]!) return true;
  return false;
}

/** Tells each unit what it is doing and at which bank level to report. */
function settle(run: Run): void {
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    const { settings, parameters } = unit;
    const on = unit.mode === ON;
    const capacity = parameters[CAPACITY_WMIN]!;
    thinkAgainLevels(run.plan, run.control, u, unit.state[STORED_WMIN]! / capacity, run.levels);
    settings[SET_ON] = on ? 1 : 0;
    settings[SET_IDLE_W] = parameters[on ? IDLE_W : STANDBY_W]!;
    settings[SET_DOWN_WMIN] = run.levels[0]! * capacity;
    settings[SET_UP_WMIN] = Math.min(
      run.levels[1]! * capacity,
      unit.mode === EMPTY_BANK ? restartWmin(run, u) : Infinity,
    );
  }
}

/** First minute after now before which nothing is due. */
function nextBreak(run: Run): number {
  if (run.phase > 0) return run.minute + 1;
  const hourEnd = (Math.floor(run.minute / BLOCK_MINUTES) + 1) * BLOCK_MINUTES;
  let next = Math.min(hourEnd, run.nextDecision, run.holdUntil);
  for (const unit of run.units) if (unit.resetAt < next) next = unit.resetAt;
  return Math.max(next, run.minute + 1);
}

/** Steps everything towards minute `until`, as far as nothing stops a unit, then deals with what did. */
function stepBlock(run: Run, until: number): void {
  const dt = 1 - run.phase;
  const count = until - run.minute;
  loadUnits(run, count);
  stepThermostats(run, count, dt);
  const done = stepUnits(run, count, dt);
  if (done < count) takeThermostatsBack(run, done, dt);
  if (done === 0) {
    stopUnits(run, dt);
    return;
  }
  run.minute += done;
  run.phase = 0;
  noteThermostats(run);
  if (run.minute < run.draw.minutes && aLevelWasCrossed(run, done)) levelCrossed(run);
}

/**
 * Every unit on its own through the block; returns the steps that all of them got through, which is where all then
 * stand. A unit that stops at the first step leaves the others tried on that step, so that nobody's order matters.
 */
function stepUnits(run: Run, count: number, dt: number): number {
  let done = count;
  for (let u = 0; u < run.units.length; u++) {
    save(run.units[u]!);
    stepOne(run, u, Math.max(1, done), dt);
    done = Math.min(done, run.units[u]!.steps);
  }
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    const { steps, ended } = unit;
    if (steps === done) continue;
    takeBack(unit);
    if (done > 0) stepOne(run, u, done, dt);
    unit.steps = steps;
    unit.ended = ended;
  }
  return done;
}

function save({ state, saved }: UnitRun): void {
  for (let i = 0; i < UNIT_STATE; i++) saved[i] = state[i]!;
}

function takeBack({ state, saved }: UnitRun): void {
  for (let i = 0; i < UNIT_STATE; i++) state[i] = saved[i]!;
}

function stepOne(run: Run, u: number, count: number, dt: number): void {
  const unit = run.units[u]!;
  unit.settings[SET_DT] = dt;
  unit.steps = stepUnit(
    unit.parameters,
    unit.state,
    unit.settings,
    run.draw.solar[u]!.usableW,
    run.minute,
    unit.loadW,
    unit.startExtraW,
    count,
    unit.event,
  );
  unit.ended = unit.event[0]!;
}

function aLevelWasCrossed(run: Run, done: number): boolean {
  for (let u = 0; u < run.units.length; u++)
    if (run.units[u]!.steps === done && run.units[u]!.ended === CROSSED) return true;
  return false;
}

/** The circuits' watts of the block, thermostats aside, to each unit. */
function loadUnits(run: Run, count: number): void {
  for (let u = 0; u < run.units.length; u++) loadUnit(run.units[u]!, run.draw, run.minute, run.hour, count);
}

/** Adds the thermostats' watts to the units' loads: one number for the block where nothing switches in it. */
function stepThermostats(run: Run, count: number, dt: number, timeAfter = run.minute + 1): void {
  const { draw, thermostats, thermostatFeeds: feeds, thermostatTouched: touched, units, minute } = run;
  for (let i = 0; i < touched.length; i++) {
    const atP = i * THERMOSTAT_PARAMETERS;
    const atS = i * THERMOSTAT_STATE;
    const powered = feeds[2 * i]! + feeds[2 * i + 1]! > 0;
    const surroundingsC = draw.thermostatSurroundings[i]!;
    const steady =
      dt === 1 &&
      staysAsItIs(draw.thermostatParameters, atP, thermostats, atS, surroundingsC, minute, count, powered);
    touched[i] = steady ? 0 : 1;
    if (!steady) {
      for (let k = atS; k < atS + THERMOSTAT_STATE; k++) run.thermostatsSaved[k] = thermostats[k]!;
      stepOneThermostat(run, i, count, dt, timeAfter);
    } else if (isRunning(thermostats, atS)) {
      const watts = draw.thermostatParameters[atP + RUNNING_W]!;
      for (let u = 0; u < units.length; u++) {
        const { settings } = units[u]!;
        settings[SET_BASE_W] = settings[SET_BASE_W]! + watts * feeds[2 * i + u]!;
      }
    }
  }
}

function stepOneThermostat(run: Run, i: number, count: number, dt: number, timeAfter: number): void {
  const { draw, thermostats, thermostatFeeds: feeds, units, minute } = run;
  const atP = i * THERMOSTAT_PARAMETERS;
  const atS = i * THERMOSTAT_STATE;
  const unit0 = units[0]!;
  const unit1 = units[1] ?? unit0;
  if (dt === 1) {
    stepThermostat(
      draw.thermostatParameters,
      atP,
      thermostats,
      atS,
      draw.thermostatSurroundings[i]!,
      minute,
      count,
      feeds[2 * i]!,
      feeds[2 * i + 1]!,
      unit0.loadW,
      unit1.loadW,
      unit0.startExtraW,
      unit1.startExtraW,
    );
  } else {
    stepThermostatShare(
      draw.thermostatParameters,
      atP,
      thermostats,
      atS,
      minute,
      now(run),
      dt,
      timeAfter,
      feeds[2 * i]!,
      feeds[2 * i + 1]!,
      unit0.loadW,
      unit1.loadW,
      unit0.startExtraW,
      unit1.startExtraW,
    );
  }
}

/** Takes the thermostats that the block touched back to its start and through `done` steps again. */
function takeThermostatsBack(run: Run, done: number, dt: number): void {
  const { thermostats, thermostatsSaved, thermostatTouched: touched } = run;
  for (let i = 0; i < touched.length; i++) {
    if (touched[i] === 0) continue;
    const atS = i * THERMOSTAT_STATE;
    for (let k = atS; k < atS + THERMOSTAT_STATE; k++) thermostats[k] = thermostatsSaved[k]!;
    if (done > 0) stepOneThermostat(run, i, done, dt, run.minute + 1);
  }
}

/** What stopped units at the present step: trips at once; an empty bank after the share of the step it can carry. */
function stopUnits(run: Run, dt: number): void {
  if (!tripUnits(run)) emptyUnits(run, dt);
  run.changed = true;
  if (run.plan.strategy.bySwitch && run.minute < run.draw.minutes) think(run);
}

function tripUnits(run: Run): boolean {
  let tripped = false;
  for (let u = 0; u < run.units.length; u++) {
    const { steps, ended } = run.units[u]!;
    if (steps > 0 || ended === EMPTY) continue;
    stopUnit(run, u, ended);
    tripped = true;
  }
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
  const loadW = unit.settings[SET_BASE_W]! + unit.loadW[0]!;
  return stepShareUntilEmpty(
    unit.parameters,
    unit.state,
    unit.settings,
    run.draw.solar[u]!.usableW[run.minute]!,
    loadW,
  );
}

/** Carries everything `dt` of a minute further, to the moment at which the first bank reaches its floor. */
function stepShare(run: Run, dt: number): void {
  const phase = run.phase + dt;
  const wholeMinute = phase >= PHASE_END;
  loadUnits(run, 1);
  stepThermostats(run, 1, dt, wholeMinute ? run.minute + 1 : run.minute + phase);
  for (const { settings } of run.units) {
    if (settings[SET_ON]! !== 0) settings[SET_FLOOR_WMIN] = -Infinity;
    settings[SET_DOWN_WMIN] = -Infinity;
    settings[SET_UP_WMIN] = Infinity;
  }
  stepUnits(run, 1, dt);
  run.units.forEach((unit, u) => {
    unit.settings[SET_FLOOR_WMIN] = run.draw.floorWmin[u]![run.hour]!;
  });
  if (wholeMinute) run.minute++;
  run.phase = wholeMinute ? 0 : phase;
  noteThermostats(run);
}

/** A bank crossed a level that somebody waits for: a stopped unit may come back, a switch thinks again. */
function levelCrossed(run: Run): void {
  if (restartRecoveredUnits(run)) run.changed = true;
  if (run.plan.strategy.bySwitch && think(run)) run.changed = true;
}
