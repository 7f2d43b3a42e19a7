/**
 * The minute loop. MODEL.md §0 gives the order of one minute; this file is that order.
 *
 * Between two moments at which anything can switch, every unit and thermostat goes through its minutes on its own,
 * an hour at most at a time. When something stops a unit on the way, the others are taken back to that minute.
 */
import {
  CROSSED, EMPTY, SELF_DISCHARGED_WMIN, SET_CHARGE_LIMIT_W, SET_DOWN_WMIN, SET_DT, SET_FLOOR_WMIN, SET_IDLE_W,
  SET_ON, SET_UP_WMIN, stepShareUntilEmpty, stepUnit, STORED_WMIN,
} from '../power/step-unit.ts';
import { CAPACITY_WMIN, IDLE_W, KEPT_PER_HOUR, STANDBY_W } from '../power/unit-parameters.ts';
import { thinkAgainLevels } from '../shedding/control.ts';
import { applyPower } from './apply-power.ts';
import { decideIfDue, think } from './decide.ts';
import { BLOCK_MINUTES, EMPTY_BANK, now, ON, type Run } from './run.ts';
import { STAGE_STRIDE } from './stage-loads.ts';
import { BEYOND_FIRST, GRACE_PASSED_AT, stepThermostat, THERMOSTAT_PARAMETERS, THERMOSTAT_STATE } from './step-thermostat.ts';
import { restartRecoveredUnits, restartWmin, stopUnit } from './unit-events.ts';
import { noteGraceGone, noteNeed } from './unmet.ts';

/** A phase this close to 1 is the minute's end: rounding of shares. */
const PHASE_END = 1 - 1e-9;

/** Lives the run through to minute `to` (whole, at most the horizon). Stopping anywhere and going on gives the same bits. */
export function advance(run: Run, to: number): void {
  while (run.minute < to) {
    if (run.phase === 0) {
      beginHour(run);
      if (decideIfDue(run)) run.changed = true;
    }
    if (run.changed) applyPower(run);
    run.changed = false;
    settle(run);
    stepBlock(run, Math.min(to, nextBreak(run)));
  }
}

/** At each full hour: self-discharge, and what the cold allows in this hour. */
function beginHour(run: Run): void {
  const hour = Math.floor(run.minute / 60);
  if (hour === run.hour) return;
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
    settings[SET_UP_WMIN] = Math.min(run.levels[1]! * capacity, unit.mode === EMPTY_BANK ? restartWmin(run, u) : Infinity);
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
  run.thermostatsSaved.set(run.thermostats);
  for (const unit of run.units) unit.saved.set(unit.state);
  loadUnits(run, count);
  stepThermostats(run, count, dt);
  const done = stepUnits(run, count, dt);
  if (done === 0) {
    takeBackTo(run, 0, dt);
    stopUnits(run, dt);
    return;
  }
  const crossed = run.units.some((unit) => unit.steps === done && unit.event[0] === CROSSED);
  if (run.units.some((unit) => unit.steps > done) || done < count) takeBackTo(run, done, dt);
  run.minute += done;
  run.phase = 0;
  noteThermostats(run);
  if (crossed && run.minute < run.draw.minutes) levelCrossed(run);
}

/** Every unit on its own through the block; returns the steps that all of them got through. */
function stepUnits(run: Run, count: number, dt: number): number {
  let done = count;
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    unit.settings[SET_DT] = dt;
    unit.steps = stepUnit(
      unit.parameters, unit.state, unit.settings, run.draw.solar[u]!.usableW, run.minute,
      unit.loadW, unit.startExtraW, count, unit.event,
    );
    if (unit.steps < done) done = unit.steps;
  }
  return done;
}

/** Takes units and thermostats back to the block's start and through `done` steps again. */
function takeBackTo(run: Run, done: number, dt: number): void {
  const events = run.units.map((unit) => unit.event[0]!);
  for (const unit of run.units) unit.state.set(unit.saved);
  run.thermostats.set(run.thermostatsSaved);
  const steps = run.units.map((unit) => unit.steps);
  if (done > 0) {
    stepUnits(run, done, dt);
    stepThermostats(run, done, dt);
  }
  run.units.forEach((unit, u) => {
    unit.event[0] = events[u]!;
    unit.steps = steps[u]!;
  });
}

/** The circuits' watts of the block, thermostats aside, to each unit. */
function loadUnits(run: Run, count: number): void {
  const stage = run.stage!;
  run.draw.stageLoads.readyAt(stage, run.minute);
  const { loads } = stage;
  for (let u = 0; u < run.units.length; u++) {
    const { loadW, startExtraW } = run.units[u]!;
    for (let k = 0, at = run.minute * STAGE_STRIDE + u; k < count; k++, at += STAGE_STRIDE) {
      loadW[k] = loads[at]!;
      startExtraW[k] = loads[at + 2]!;
    }
  }
}

function stepThermostats(run: Run, count: number, dt: number): void {
  const { draw, thermostatFeeds, units } = run;
  const unit0 = units[0]!;
  const unit1 = units[1] ?? unit0;
  for (let i = 0; i < draw.thermostatSurroundings.length; i++) {
    stepThermostat(
      draw.thermostatParameters, i * THERMOSTAT_PARAMETERS, run.thermostats, i * THERMOSTAT_STATE,
      draw.thermostatSurroundings[i]!, run.minute, now(run), dt, count,
      thermostatFeeds[2 * i]!, thermostatFeeds[2 * i + 1]!,
      unit0.loadW, unit1.loadW, unit0.startExtraW, unit1.startExtraW,
    );
  }
}

/** What stopped units at the present step: trips at once; an empty bank after the share of the step it can carry. */
function stopUnits(run: Run, dt: number): void {
  const stopped = run.units.flatMap((unit, u) => (unit.steps === 0 ? u : []));
  const trips = stopped.filter((u) => run.units[u]!.event[0] !== EMPTY);
  if (trips.length > 0) {
    for (const u of trips) stopUnit(run, u, run.units[u]!.event[0]!);
  } else {
    const shares = stopped.map((u) => shareUntilEmpty(run, u));
    const share = Math.min(...shares);
    if (share > 0) stepShare(run, share * dt);
    stopped.forEach((u, i) => {
      if (shares[i]! <= share) stopUnit(run, u, EMPTY);
    });
  }
  run.changed = true;
  if (run.plan.strategy.bySwitch && run.minute < run.draw.minutes) think(run);
}

function shareUntilEmpty(run: Run, u: number): number {
  const unit = run.units[u]!;
  return stepShareUntilEmpty(unit.parameters, unit.state, unit.settings, run.draw.solar[u]!.usableW[run.minute]!, unit.loadW[0]!);
}

/** Carries everything `dt` of a minute further, to the moment at which the first bank reaches its floor. */
function stepShare(run: Run, dt: number): void {
  loadUnits(run, 1);
  stepThermostats(run, 1, dt);
  for (const { settings } of run.units) {
    settings[SET_FLOOR_WMIN] = -Infinity;
    settings[SET_DOWN_WMIN] = -Infinity;
    settings[SET_UP_WMIN] = Infinity;
  }
  stepUnits(run, 1, dt);
  run.units.forEach((unit, u) => {
    unit.settings[SET_FLOOR_WMIN] = run.draw.floorWmin[u]![run.hour]!;
  });
  run.phase += dt;
  if (run.phase >= PHASE_END) {
    run.minute++;
    run.phase = 0;
  }
  noteThermostats(run);
}

/** A bank crossed a level that somebody waits for: a stopped unit may come back, a switch thinks again. */
function levelCrossed(run: Run): void {
  if (restartRecoveredUnits(run)) run.changed = true;
  if (run.plan.strategy.bySwitch) {
    think(run);
    run.changed = true;
  }
}

/** Passes on what the thermostats noted on the way: a grace run out, a limit passed. */
function noteThermostats(run: Run): void {
  const { thermostats } = run.draw.usage;
  for (let i = 0; i < thermostats.length; i++) {
    const graceGone = run.thermostats[i * THERMOSTAT_STATE + GRACE_PASSED_AT]!;
    const beyond = run.thermostats[i * THERMOSTAT_STATE + BEYOND_FIRST]!;
    const { circuitIndex, limitC } = thermostats[i]!;
    if (beyond >= 0) noteNeed(run, circuitIndex, beyond);
    if (graceGone < 0) continue;
    const { offCause, offUnit } = run.groups[run.household.circuits[circuitIndex]!.group]!;
    noteGraceGone(run, circuitIndex, graceGone, offCause, offUnit, limitC === undefined);
  }
}
