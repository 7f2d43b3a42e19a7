/** Puts into effect what the strategy allows and the units can feed. MODEL.md §5. */
import { causeIndex } from './end-causes.ts';
import { withShare } from './load-pattern.ts';
import { groupWminUntil } from './prepared-draw.ts';
import { ASLEEP, BOTH_UNITS, NOBODY, now, ON, PARTNER_STOPPED, type GroupRun, type Run } from './run.ts';
import { runMinutes, settleThermostat } from './step-thermostat.ts';
import { makes240V } from './sources-run.ts';
import { noteThermostats, noteWithoutPower } from './unmet.ts';

const SWITCHED_OFF = causeIndex('switched off');
const NO_240V = causeIndex('source without 240 V');

/** Who can feed the group now; 240 V needs both. */
function feederOf(run: Run, group: number): number {
  const { unit, is240V } = run.household.groups[group]!;
  const { units, control } = run;
  if (is240V)
    return units.length === 2 && units[0]!.mode === ON && units[1]!.mode === ON && makes240V(run.sources)
      ? BOTH_UNITS
      : NOBODY;
  if (unit < 0) return NOBODY;
  if (units[unit]!.mode === ON) return unit;
  const other = 1 - unit;
  const moved = control.moved && control.asleepUnit === unit && units[unit]!.mode === ASLEEP;
  return moved && units[other]?.mode === ON ? other : NOBODY;
}

/** Share of a group's watts that unit `u` carries. */
function shareOf(feeder: number, u: number): number {
  return feeder === BOTH_UNITS ? 0.5 : feeder === u ? 1 : 0;
}

/** Closes the group's present stretch and opens the next at `time`. */
function closeStretch(run: Run, group: number, time: number): void {
  const state = run.groups[group]!;
  const wmin = groupWminUntil(run.draw, group, time);
  if (state.on) {
    const served = wmin - state.sinceWmin;
    state.servedWmin += served;
    for (let u = 0; u < run.units.length; u++) run.units[u]!.servedWmin += shareOf(state.feeder, u) * served;
    state.onMinutes += time - state.since;
    if (time > state.since) state.withoutSince = time;
  } else {
    for (const c of run.household.groups[group]!.watched) noteWithoutPower(run, c, state, time);
  }
  state.since = time;
  state.sinceWmin = wmin;
}

/** Books every open stretch up to the present moment, for good: called at the end of the run. */
export function closeAll(run: Run): void {
  for (let g = 0; g < run.groups.length; g++) closeStretch(run, g, now(run));
  for (let i = 0; i < run.thermostatStates.length; i++) {
    countThermostat(run, i);
    settleThermostat(run.draw.thermostatPlaces[i]!, run.thermostatStates[i]!, now(run));
  }
  noteThermostats(run);
  for (const unit of run.units) {
    if (unit.mode > ASLEEP) unit.downMinutes += now(run) - unit.downSince;
    unit.downSince = now(run);
  }
}

/** Takes down why the group is off: switched off, a unit that is down, or units that are not in step. */
function blame(run: Run, group: number, allowed: boolean, state: GroupRun): void {
  const down = allowed ? unitToBlame(run, group) : -1;
  state.offUnit = down;
  if (down >= 0) state.offCause = run.units[down]!.cause;
  else
    state.offCause =
      allowed && run.household.groups[group]!.is240V && !makes240V(run.sources) ? NO_240V : SWITCHED_OFF;
}

/** The unit that is down and would feed the group; of two, the first that did not merely follow its partner; else -1. */
function unitToBlame({ household, units }: Run, group: number): number {
  const { unit, is240V } = household.groups[group]!;
  if (!is240V) return (units[unit]?.mode ?? ON) > ASLEEP ? unit : -1;
  for (let u = 0; u < units.length; u++) {
    const { mode } = units[u]!;
    if (mode > ASLEEP && mode !== PARTNER_STOPPED) return u;
  }
  return -1;
}

/** Switches groups on and off to match units and strategy, and hangs them on the units that feed them. */
export function applyPower(run: Run): void {
  const time = now(run);
  const { groups, has240V } = run.household;
  const gridIsOn = run.sources?.gridIsOn === true;
  let shed = false;
  for (let g = 0; g < groups.length; g++) {
    const allowed = run.control.allowed[groups[g]!.first] === 1 || gridIsOn;
    const feeder = allowed ? feederOf(run, g) : NOBODY;
    const state = run.groups[g]!;
    if (!allowed) shed = true;
    if (feeder === state.feeder && state.on === (feeder !== NOBODY)) continue;
    closeStretch(run, g, time);
    state.feeder = feeder;
    state.on = feeder !== NOBODY;
    if (!state.on) blame(run, g, allowed, state);
    for (let u = 0; u < run.units.length; u++) {
      const unit = run.units[u]!;
      unit.pattern = withShare(run.draw.hourLoads.patterns, unit.pattern, g, shareOf(feeder, u));
    }
    feedThermostats(run, g);
  }
  let up = 0;
  for (const unit of run.units) if (unit.mode === ON) up++;
  if (shed && time < run.firstShed) run.firstShed = time;
  if (has240V && (up < 2 || !makes240V(run.sources)) && time < run.first240Loss) run.first240Loss = time;
  if (up === 0 && time < run.firstBlackout) run.firstBlackout = time;
}

/** Books what thermostat `i` has drawn so far to the units that carried it. */
function countThermostat(run: Run, i: number): void {
  const place = run.draw.thermostatPlaces[i]!;
  const ran = runMinutes(place, run.thermostatStates[i]!, now(run));
  const wmin = place.parameters.runningW * (ran - run.thermostatCounted[i]!);
  for (let u = 0; u < run.units.length; u++)
    run.units[u]!.servedWmin += run.thermostatFeeds[2 * i + u]! * wmin;
  run.thermostatCounted[i] = ran;
}

/** Hangs the group's thermostats on the units that feed it. */
function feedThermostats(run: Run, group: number): void {
  const thermostats = run.draw.groupThermostats[group]!;
  for (let k = 0; k < thermostats.length; k++) {
    const i = thermostats[k]!;
    countThermostat(run, i);
    run.thermostatsMoved = true;
    const { runningW } = run.draw.thermostatPlaces[i]!.parameters;
    for (let u = 0; u < run.units.length; u++) {
      const unit = run.units[u]!;
      const share = unit.pattern.shares[group]!;
      const before = run.thermostatFeeds[2 * i + u]!;
      if (share === before) continue;
      run.thermostatFeeds[2 * i + u] = share;
      unit.thermostatW += (share - before) * runningW; // kept to a 64th: exact
      unit.ahead.to = 0;
    }
  }
}
