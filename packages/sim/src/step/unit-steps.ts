/** The units of a run through a block of minutes, each on its own. MODEL.md §0. */
import { copyUnitState, CROSSED, stepUnit } from '../power/step-unit.ts';
import { blocksOf } from './hour-loads.ts';
import type { Run } from './run.ts';
import { addUpThermostats, switchThrough, unswitchThermostats } from './run-thermostats.ts';
import { isFed, saveSums, stepFed, takeSumsBack } from './step-fed-unit.ts';

/**
 * Every unit on its own through the block; returns the steps that all of them got through, which is where all then
 * stand. A unit that stops at the first step leaves the others tried on that step, so that nobody's order matters.
 */
export function stepUnits(run: Run, count: number, dt: number): number {
  let done = count;
  for (let u = 0; u < run.units.length; u++) {
    const { state, saved } = run.units[u]!;
    copyUnitState(state, saved);
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
export function takeUnitBack(run: Run, u: number): void {
  const { state, saved } = run.units[u]!;
  copyUnitState(saved, state);
  if (run.sources !== undefined) takeSumsBack(run.sources, u);
  unswitchThermostats(run, u);
}

/** One unit through `count` steps, or until it stops. Its thermostats go ahead; if it stops, they are taken back to that. */
function stepOne(run: Run, u: number, count: number, dt: number): void {
  const { draw, minute } = run;
  const unit = run.units[u]!;
  const { parameters, state, settings, pattern, event } = unit;
  settings.dt = dt;
  switchThrough(run, u, minute + count);
  const fed = isFed(run, u);
  const mindsW = fed ? -Infinity : parameters.surgeW - unit.thermostatW - 1; // a watt to spare for rounding
  const blocks = blocksOf(draw, pattern, minute, minute + count, mindsW);
  const steps = fed
    ? stepFed(run, run.sources!, u, blocks, count)
    : stepUnit(
        parameters,
        state,
        settings,
        draw.cold[u]!,
        draw.solar[u]!,
        draw.hourLoads,
        blocks,
        minute,
        count,
        draw.switchings,
        event,
      );
  unit.steps = steps;
  unit.ended = event[0]!;
  if (steps < count) backToStop(run, u, minute + steps);
}

/** The unit stopped at `minute`: so far, and where that minute was not carried out into it, its thermostats have switched. */
function backToStop(run: Run, u: number, minute: number): void {
  const { ended } = run.units[u]!;
  unswitchThermostats(run, u);
  switchThrough(run, u, ended === CROSSED ? minute : minute + 1);
  addUpThermostats(run, u, minute);
}
