/** Puts into effect what the strategy allows and the units can feed. MODEL.md §5. */
import { causeIndex } from './end-causes.ts';
import { wantedWminUntil } from './ledger.ts';
import { ON, ASLEEP, now, type GroupRun, type Run } from './run.ts';
import type { Feeding } from './stage-loads.ts';
import { THERMOSTAT_STATE, WAIT_MINUTES } from './step-thermostat.ts';
import { noteWithoutPower } from './unmet.ts';

const SWITCHED_OFF = causeIndex('switched off');

/** Which unit feeds the group now, -1 when none can; 240 V needs both. */
function feederOf(run: Run, group: number): number {
  const { unit, is240V } = run.household.groups[group]!;
  const { units, control } = run;
  if (is240V) return units.length === 2 && units[0]!.mode === ON && units[1]!.mode === ON ? 0 : -1;
  if (unit < 0) return -1;
  if (units[unit]!.mode === ON) return unit;
  const other = 1 - unit;
  const moved = control.moved && control.asleepUnit === unit && units[unit]!.mode === ASLEEP;
  return moved && units[other]?.mode === ON ? other : -1;
}

/** Closes the group's present stretch and opens the next at `time`. */
function closeStretch(run: Run, group: number, time: number): void {
  const state = run.groups[group]!;
  const sum = run.draw.groupWmin[group]!;
  if (state.on) {
    state.servedWmin += wantedWminUntil(sum, time) - wantedWminUntil(sum, state.since);
    state.onMinutes += time - state.since;
  } else {
    for (const c of run.household.groups[group]!.watched) noteWithoutPower(run, c, state.since, time, state.offCause, state.offUnit);
  }
  state.since = time;
}

/** Books every open stretch up to the end of the run. */
export function closeAll(run: Run): void {
  for (let g = 0; g < run.groups.length; g++) closeStretch(run, g, now(run));
  for (const unit of run.units) {
    if (unit.mode > ASLEEP) unit.downMinutes += now(run) - unit.downSince;
    unit.downSince = now(run);
  }
}

function blame(run: Run, group: number, allowed: boolean, state: GroupRun): void {
  const { unit, is240V } = run.household.groups[group]!;
  const down = is240V ? run.units.findIndex((u) => u.mode > ASLEEP) : run.units[unit] !== undefined && run.units[unit].mode > ASLEEP ? unit : -1;
  state.offUnit = allowed ? down : -1;
  state.offCause = allowed && down >= 0 ? run.units[down]!.cause : SWITCHED_OFF;
}

/** Switches groups on and off to match units and strategy, and picks the stage to step with. */
export function applyPower(run: Run): void {
  const time = now(run);
  const { groups } = run.household;
  let shed = false;
  for (let g = 0; g < groups.length; g++) {
    const allowed = run.control.allowed[groups[g]!.circuits[0]!] === 1;
    const on = allowed && feederOf(run, g) >= 0;
    if (!allowed) shed = true;
    const state = run.groups[g]!;
    if (on !== state.on) {
      closeStretch(run, g, time);
      state.on = on;
      run.groupsOn[g] = on ? 1 : 0;
      if (!on) blame(run, g, allowed, state);
    }
  }
  if (shed && time < run.firstShed) run.firstShed = time;
  const up = run.units.filter((u) => u.mode === ON).length;
  if (run.household.has240V && up < 2 && time < run.first240Loss) run.first240Loss = time;
  if (up === 0 && time < run.firstBlackout) run.firstBlackout = time;
  feedThermostats(run);
  run.stage = run.draw.stageLoads.stage(run.groupsOn, feeding(run));
}

function feeding(run: Run): Feeding {
  const { asleepUnit, moved } = run.control;
  if (!moved || asleepUnit < 0 || run.units[asleepUnit]!.mode !== ASLEEP) return 'own';
  return asleepUnit === 0 ? 1 : 0;
}

function feedThermostats(run: Run): void {
  run.draw.usage.thermostats.forEach((want, i) => {
    const { group, is240V } = run.household.circuits[want.circuitIndex]!;
    const on = run.groups[group]!.on;
    const feeder = on ? feederOf(run, group) : -1;
    const share = is240V ? 0.5 : 1;
    run.thermostatFeeds[2 * i] = on && (is240V || feeder === 0) ? share : 0;
    run.thermostatFeeds[2 * i + 1] = on && (is240V || feeder === 1) ? share : 0;
    if (on) run.thermostats[i * THERMOSTAT_STATE + WAIT_MINUTES] = 0;
  });
}
