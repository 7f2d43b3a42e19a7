/** A unit stops, is brought back, or comes back by itself. MODEL.md §6.3, §9. */
import { coldFloorWmin } from '../power/hour-figures.ts';
import { BATTERY_LIMIT, EMPTY, OVERLOAD, restartLevelWmin, SURGE } from '../power/step-unit.ts';
import { holdTiersBack } from '../shedding/control.ts';
import { causeIndex, type EndCause } from './end-causes.ts';
import { ASLEEP, EMPTY_BANK, now, ON, PARTNER_STOPPED, TRIPPED, type Run, type UnitRun } from './run.ts';
import { isPassing } from './sources-run.ts';

/** Minutes without a trip after which a unit's own tries count from the beginning. */
const STEADY_MINUTES = 60;

/** The cold is to blame once it holds back more than this share of the capacity. */
const COLD_SHARE = 0.15;

const TRIP_CAUSE: Readonly<Record<number, EndCause>> = {
  [OVERLOAD]: 'overload trip',
  [SURGE]: 'starting surge trip',
  [BATTERY_LIMIT]: 'battery limit trip',
};

function goDown(run: Run, unit: UnitRun, mode: number, cause: EndCause): void {
  if (unit.mode <= ASLEEP) unit.downSince = now(run);
  unit.mode = mode;
  unit.cause = causeIndex(cause);
  unit.state.overloadedMinutes = 0;
}

function comeBack(run: Run, u: number): void {
  const unit = run.units[u]!;
  unit.downMinutes += now(run) - unit.downSince;
  unit.mode = run.control.asleepUnit === u && !isPassing(run.sources, u) ? ASLEEP : ON;
  unit.onSince = now(run);
  unit.resetAt = Infinity;
  const partner = run.units[1 - u];
  if (partner?.mode === PARTNER_STOPPED) comeBack(run, 1 - u);
}

/** How far above its floor the bank of unit `u` must come after a cut-off: as far as restart lies above cut-off. */
export function restartAboveFloorWmin(run: Run, u: number): number {
  const { parameters } = run.units[u]!;
  const { cutOffFraction } = run.household.units[u]!.battery;
  return parameters.restartWmin - cutOffFraction * parameters.capacityWmin;
}

/** The level below which the bank of unit `u` is not drawn in the hour that it has begun last. */
export function floorWmin(run: Run, u: number): number {
  return coldFloorWmin(run.draw.cold[u]!, run.hour);
}

/** Carries out what stopped unit `u`: `event` as in power/step-unit.ts. */
export function stopUnit(run: Run, u: number, event: number): void {
  const unit = run.units[u]!;
  if (event === EMPTY) {
    const { cutOffFraction } = run.household.units[u]!.battery;
    const floorFraction = floorWmin(run, u) / unit.parameters.capacityWmin;
    goDown(
      run,
      unit,
      EMPTY_BANK,
      floorFraction > cutOffFraction + COLD_SHARE ? 'battery too cold' : 'battery empty',
    );
  } else {
    goDown(run, unit, TRIPPED, TRIP_CAUSE[event]!);
    run.trips++;
    planReset(run, u);
  }
  const partner = run.units[1 - u];
  const takesPartnerDown = run.household.stopsTogether && !isPassing(run.sources, 1 - u);
  if (takesPartnerDown && partner !== undefined && partner.mode <= ASLEEP)
    goDown(run, partner, PARTNER_STOPPED, 'partner stopped');
}

/** Sets when a tripped unit is brought back: by itself while it has tries left, else by a person who is awake. */
function planReset(run: Run, u: number): void {
  const unit = run.units[u]!;
  const { resetsItselfAfterMinutes, resetTries } = run.household.units[u]!.inverter;
  if (run.minute - unit.onSince >= STEADY_MINUTES) unit.triesLeft = resetTries;
  unit.resetByPerson = resetsItselfAfterMinutes === undefined || unit.triesLeft === 0;
  if (unit.resetByPerson) {
    unit.resetAt = reactionTo(run);
  } else {
    unit.triesLeft--;
    unit.resetAt = run.minute + resetsItselfAfterMinutes!;
  }
}

/** When somebody has reacted to a trip of this minute: noticed while awake, dealt with while awake, a minute later at least. */
export function reactionTo(run: Run): number {
  const reactsAt = nextAwake(run, run.minute) + run.plan.person.tripReactionMinutes;
  return nextAwake(run, Math.max(run.minute + 1, reactsAt));
}

/** First minute from `from` in which the person is awake; never, when the study ends first. */
export function nextAwake(run: Run, from: number): number {
  const { localMinuteOfDay, minutes } = run.draw.clock;
  for (let m = from; m < minutes; m++) if (run.plan.day.awake[localMinuteOfDay[m]!] === 1) return m;
  return Infinity;
}

/** Somebody resets what tripped and leaves the least essential tiers off: once, however much they reset in this minute. */
export function holdTiers(run: Run): void {
  if (run.heldAt === run.minute) return;
  run.heldAt = run.minute;
  holdTiersBack(run.plan, run.control);
  run.holdUntil = nextAwake(run, run.minute + run.plan.person.afterTripHoldMinutes);
}

/** Brings back what is due now. True when anything changed. */
export function resetDueUnits(run: Run): boolean {
  let changed = false;
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    if (unit.mode !== TRIPPED || unit.resetAt > run.minute) continue;
    if (unit.resetByPerson) {
      holdTiers(run);
      unit.triesLeft = run.household.units[u]!.inverter.resetTries;
    }
    comeBack(run, u);
    changed = true;
  }
  return changed;
}

/** Brings back units whose bank has recovered from a cut-off. True when anything changed. */
export function restartRecoveredUnits(run: Run): boolean {
  let changed = false;
  run.units.forEach((unit, u) => {
    if (unit.mode !== EMPTY_BANK) return;
    const { capacityWmin } = unit.parameters;
    const level = restartLevelWmin(floorWmin(run, u), restartAboveFloorWmin(run, u), capacityWmin);
    if (unit.state.storedWmin < level) return;
    comeBack(run, u);
    changed = true;
  });
  return changed;
}

/** Units that had stopped, but for tripped ones, come back as soon as a source passes through them. */
export function powerAgain(run: Run): void {
  run.units.forEach(({ mode }, u) => {
    if ((mode === EMPTY_BANK || mode === PARTNER_STOPPED) && isPassing(run.sources, u)) comeBack(run, u);
  });
}

/** Puts to sleep and wakes as the control has decided. True when anything changed. */
export function followSleep(run: Run): boolean {
  let changed = false;
  for (let u = 0; u < run.units.length; u++) {
    const unit = run.units[u]!;
    const shouldSleep = run.control.asleepUnit === u && !isPassing(run.sources, u);
    if (unit.mode > ASLEEP || (unit.mode === ASLEEP) === shouldSleep) continue;
    unit.mode = shouldSleep ? ASLEEP : ON;
    if (!shouldSleep) unit.onSince = now(run);
    changed = true;
  }
  return changed;
}
