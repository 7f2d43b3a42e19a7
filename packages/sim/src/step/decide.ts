/** The moments at which somebody, or the switch, thinks. MODEL.md §3.2. */
import { solarWmin } from '../power/hour-figures.ts';
import { releaseHeldTiers, rethink } from '../shedding/control.ts';
import { ASLEEP, type Run } from './run.ts';
import { followSleep, resetDueUnits } from './unit-events.ts';

const SOLAR_MEAN_MINUTES = 15;

/** Carries out what is due at the present whole minute and sets when to think next. True when anything may have changed. */
export function decideIfDue(run: Run): boolean {
  const cameBack = resetDueUnits(run);
  let changed = cameBack;
  if (run.minute >= run.holdUntil) {
    releaseHeldTiers(run.plan, run.control);
    run.holdUntil = Infinity;
    changed = true;
  }
  const due = run.minute >= run.nextDecision;
  if ((due && mayThink(run)) || (cameBack && run.plan.strategy.bySwitch)) {
    if (think(run)) changed = true;
  }
  if (due) {
    const gap = run.plan.nextDecision[run.draw.clock.localMinuteOfDay[run.minute]!]!;
    run.nextDecision = gap === 0 ? Infinity : run.minute + stepToMark(run, gap);
  }
  return changed;
}

/** A switch thinks at any time, a person while awake; what the outage's first moment finds was set beforehand. */
function mayThink(run: Run): boolean {
  const { strategy, day } = run.plan;
  return (
    strategy.bySwitch || run.minute === 0 || day.awake[run.draw.clock.localMinuteOfDay[run.minute]!] === 1
  );
}

/** Minutes to the next marked minute of the local day: the usual gap, unless the clocks change on the way. */
export function stepToMark(run: Run, gap: number): number {
  const { localMinuteOfDay, minutes } = run.draw.clock;
  const here = run.minute;
  if (here + gap < minutes && localMinuteOfDay[here + gap] === (localMinuteOfDay[here]! + gap) % 1440)
    return gap;
  for (let k = 1; k <= gap && here + k < minutes; k++) {
    const before = localMinuteOfDay[here + k - 1]!;
    if (localMinuteOfDay[here + k] !== (before + 1) % 1440) return k; // look again at the jump, then go on as usual
  }
  return gap;
}

/** Reads the gauges and thinks through the strategy's rules. True when anything changed. */
export function think(run: Run): boolean {
  const { control, readings, plan, units } = run;
  if (plan.strategy.rules.length === 0) return false;
  readings.localMinuteOfDay = run.draw.clock.localMinuteOfDay[run.minute]!;
  for (let u = 0; u < units.length; u++) {
    const unit = units[u]!;
    readings.charge[u] = unit.state.storedWmin / unit.parameters.capacityWmin;
    readings.down[u] = unit.mode > ASLEEP ? 1 : 0;
  }
  if (plan.readsSun) readings.solarW = recentSolarW(run);
  const rethought = rethink(plan, control, readings);
  const slept = followSleep(run);
  if (rethought && control.thrown > 0) {
    run.stageChanges++;
    run.switchThrows += control.thrown;
  }
  if (plan.strategy.bySwitch) run.unsettled = true; // it may wait for other levels now
  return rethought || slept;
}

function recentSolarW(run: Run): number {
  const from = Math.max(0, run.minute - SOLAR_MEAN_MINUTES);
  if (from === run.minute) return 0;
  let sum = 0;
  for (const solar of run.draw.solar) sum += solarWmin(solar, from, run.minute);
  return sum / (run.minute - from);
}
