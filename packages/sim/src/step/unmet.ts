/** When somebody goes without: watching the circuits of tier 1 and those that serve a need. MODEL.md §8. */
import { causeIndex } from './end-causes.ts';
import type { GroupRun, Run, RunEnd } from './run.ts';
import { momentBeyond, wantedUntil } from './wanted-minutes.ts';

const PARTNER_STOPPED = causeIndex('partner stopped');

/** Books the stretch from `group.since` to `to`, in which a watched circuit of the group had no power. */
export function noteWithoutPower(run: Run, circuit: number, group: GroupRun, to: number): void {
  const { draw } = run;
  const { withoutSince, since, offCause, offUnit } = group;
  const { graceMinutes } = run.household.circuits[circuit]!;
  if (to - withoutSince <= graceMinutes) return;
  const before = wantedUntil(draw, circuit, withoutSince);
  const beyond = wantedUntil(draw, circuit, to) - before - graceMinutes;
  if (beyond <= 0) return;
  // a gap goes on over power that came and went in one instant: what it was beyond by then is booked
  const booked = Math.max(0, wantedUntil(draw, circuit, since) - before - graceMinutes);
  run.unmetMinutes[circuit] = run.unmetMinutes[circuit]! + (beyond - booked);
  if (booked === 0)
    noteGraceGone(run, circuit, momentBeyond(draw, circuit, withoutSince, graceMinutes), offCause, offUnit);
}

/**
 * A circuit's grace ran out at `time`.
 * @param unmetsNeed false where a temperature limit, not the lack of power, tells whether the need is met
 */
export function noteGraceGone(
  run: Run,
  circuit: number,
  time: number,
  cause: number,
  unit: number,
  unmetsNeed = true,
): void {
  const { tier } = run.household.circuits[circuit]!;
  if (unmetsNeed) noteNeed(run, circuit, time);
  if (tier !== 1 || time > run.end.minute) return;
  if (time === run.end.minute && !saysMore(cause, circuit, run.end)) return;
  run.end.minute = time;
  run.end.cause = cause;
  run.end.unit = unit;
  run.end.circuit = circuit;
}

/** Of circuits that go without in one moment: one whose own unit failed, not its partner; then the first written. */
function saysMore(cause: number, circuit: number, end: RunEnd): boolean {
  const [mine, theirs] = [cause, end.cause].map((c) => (c === PARTNER_STOPPED ? Infinity : c));
  return mine! < theirs! || (mine === theirs && circuit < end.circuit);
}

/** The need that the circuit serves is unmet at `time`. */
export function noteNeed(run: Run, circuit: number, time: number): void {
  const { need } = run.household.circuits[circuit]!;
  if (need >= 0 && time < run.needFirst[need]!) run.needFirst[need] = time;
}

/** Bits of what a thermostat has passed on. */
const LIMIT_NOTED = 1;
const GRACE_NOTED = 2;

/** Passes on, once, what the thermostats noted on the way: a grace run out, a limit passed. */
export function noteThermostats(run: Run): void {
  const { thermostatStates: states, thermostatNoted: noted } = run;
  for (let i = 0; i < noted.length; i++) {
    const { beyondFirst: beyond, gracePassedAt: graceGone } = states[i]!;
    if (beyond >= 0 && (noted[i]! & LIMIT_NOTED) === 0) {
      noted[i]! |= LIMIT_NOTED;
      noteNeed(run, run.draw.usage.thermostats[i]!.circuitIndex, beyond);
    }
    if (graceGone >= 0 && (noted[i]! & GRACE_NOTED) === 0) {
      noted[i]! |= GRACE_NOTED;
      noteLongWait(run, i, graceGone);
    }
  }
}

function noteLongWait(run: Run, i: number, time: number): void {
  const { circuitIndex, limitC } = run.draw.usage.thermostats[i]!;
  const { offCause, offUnit } = run.groups[run.household.circuits[circuitIndex]!.group]!;
  noteGraceGone(run, circuitIndex, time, offCause, offUnit, limitC === undefined);
}
