/** The units of a run through a block of minutes, each on its own. MODEL.md §0. */
import { copyUnitState, CROSSED, DONE, stepUnit } from '../power/step-unit.ts';
import { blocksUntil } from './hour-loads.ts';
import type { Run, UnitRun } from './run.ts';
import { takeSwitchingsBack } from './run-thermostats.ts';
import { isFed, saveSums, stepFed, takeSumsBack } from './step-fed-unit.ts';

/**
 * Every unit on its own through the block; returns the steps that all of them got through, which is where all then
 * stand. A unit that stops at the first step leaves the others tried on that step, so that nobody's order matters.
 */
export function stepUnits(run: Run, count: number, dt: number): number {
  const { units } = run;
  let done = count;
  for (let u = 0; u < units.length; u++) {
    const { state, saved } = units[u]!;
    copyUnitState(state, saved);
    if (run.sources !== undefined) saveSums(run.sources, u);
    stepOne(run, u, Math.max(1, done), dt);
    done = Math.min(done, units[u]!.steps);
  }
  for (let u = 0; u < units.length; u++)
    if (units[u]!.steps !== done || (units.length > 1 && stopsNext(units[u]!))) stepAgain(run, u, done, dt);
  return done;
}

/**
 * It was asked for more, and stops in the next step. What many minutes come to at once depends in its last digit on how
 * many were asked for: another unit that stops there too may have been asked for just so many.
 */
function stopsNext({ ended }: UnitRun): boolean {
  return ended !== DONE && ended !== CROSSED;
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

/** Takes the unit back to the block's beginning. */
export function takeUnitBack(run: Run, u: number): void {
  const { state, saved } = run.units[u]!;
  copyUnitState(saved, state);
  if (run.sources !== undefined) takeSumsBack(run.sources, u);
  takeSwitchingsBack(run.units[u]!);
}

/** One unit through `count` steps, or until it stops. */
function stepOne(run: Run, u: number, count: number, dt: number): void {
  const unit = run.units[u]!;
  unit.settings.dt = dt;
  unit.steps = isFed(run, u) ? stepFedOne(run, u, count) : stepUnfed(run, u, count);
  unit.ended = unit.event[0]!;
}

function stepFedOne(run: Run, u: number, count: number): number {
  const { draw, minute } = run;
  const { pattern } = run.units[u]!;
  blocksUntil(draw, pattern, minute, minute + count, -Infinity);
  return stepFed(run, run.sources!, u, pattern.blocks, count);
}

/** Through as many hours at once as their loads are added up already; the next one's only once the unit comes to it. */
function stepUnfed(run: Run, u: number, count: number): number {
  const { draw, minute } = run;
  const { parameters, state, settings, pattern, ahead, event, thermostatW } = run.units[u]!;
  const mindsW = parameters.surgeW - thermostatW - 1; // a watt to spare for rounding
  const to = minute + count;
  let from = minute;
  while (from < to) {
    const ready = blocksUntil(draw, pattern, from, to, mindsW);
    settings.leaksFirst = from > minute;
    from += stepUnit(
      parameters,
      state,
      settings,
      draw.cold[u]!,
      draw.solar[u]!,
      draw.hourLoads,
      pattern.blocks,
      from,
      ready - from,
      ahead,
      event,
    );
    if (from < ready || event[0] !== DONE) break;
  }
  return from - minute;
}
