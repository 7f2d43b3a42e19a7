/** A run followed no further than needed to tell how long tier 1 lasts. MODEL.md §8. */
import { advance } from './advance.ts';
import { closeAll } from './apply-power.ts';
import { now, type Run } from './run.ts';
import { hasWaitedTooLong } from './step-thermostat.ts';
import { wantedUntil } from './wanted-minutes.ts';

/** How often it is asked whether tier 1 has gone without. */
const ASKED_EVERY_MINUTES = 720;

/**
 * Lives the run until tier 1 has gone without for longer than its grace, or else through to the horizon, and closes it.
 * When it ended, of what and on which unit are then the same bits as in the whole run; sums are those up to where it was
 * left.
 */
export function liveToEnd(run: Run): void {
  const { minutes } = run.draw;
  while (run.minute < minutes && !hasEnded(run))
    advance(run, Math.min(minutes, run.minute + ASKED_EVERY_MINUTES));
  closeAll(run);
}

/** It has, or will have once the present stretches without power are closed. */
function hasEnded(run: Run): boolean {
  return run.end.minute < Infinity || isCircuitWithout(run) || isThermostatWithout(run);
}

function isCircuitWithout(run: Run): boolean {
  const { household, draw, groups } = run;
  return household.groups.some(({ watched }, g) => {
    const { on, withoutSince } = groups[g]!;
    if (on) return false;
    return watched.some((c) => {
      const { tier, graceMinutes } = household.circuits[c]!;
      return tier === 1 && wantedUntil(draw, c, now(run)) - wantedUntil(draw, c, withoutSince) > graceMinutes;
    });
  });
}

function isThermostatWithout(run: Run): boolean {
  const { household, draw, thermostatStates } = run;
  return thermostatStates.some(
    (state, i) =>
      household.circuits[draw.usage.thermostats[i]!.circuitIndex]!.tier === 1 &&
      hasWaitedTooLong(draw.thermostatPlaces[i]!, state, now(run)),
  );
}
