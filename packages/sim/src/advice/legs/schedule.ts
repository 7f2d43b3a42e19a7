/** The panel schedule of an assignment. */
import type { Circuit } from '../../scenario/scenario.ts';
import type { CircuitMove, LegSchedule, ScheduledCircuit } from './legs-answer.ts';
import { continuousLimitW, legLoad, LEGS, unitOn } from './leg-limits.ts';
import { nameplateOf } from './nameplate.ts';
import { circuitsOn, movesBetween, type Panel, type Sides } from './panel.ts';

export function scheduleOf(panel: Panel, sides: Sides): { legs: LegSchedule[]; across: ScheduledCircuit[] } {
  const circuits = circuitsOn(panel, sides);
  const moved = new Set(movesBetween(panel.present, sides).map((i) => panel.movable[i]!));
  const scheduled = circuits.map((circuit, at) => ({
    leg: circuit.leg,
    entry: entryOf(circuit, panel.movable.includes(at), moved.has(at)),
  }));
  const on = (leg: Circuit['leg']) => scheduled.filter((s) => s.leg === leg).map((s) => s.entry);
  const legs = LEGS.map((leg) => {
    const unit = unitOn(panel.household, leg);
    const { allW, unattendedW } = legLoad(circuits, leg);
    return {
      leg,
      unitId: unit.id,
      circuits: on(leg),
      nameplateW: allW,
      unattendedW,
      continuousW: continuousLimitW(unit),
    };
  });
  return { legs, across: on('both') };
}

function entryOf(circuit: Circuit, movable: boolean, moved: boolean): ScheduledCircuit {
  const { id, title, tier, breakerA, leg, legFixed } = circuit;
  return {
    id,
    title: title ?? id,
    tier,
    breakerA: breakerA ?? null,
    nameplateW: nameplateOf(circuit).allW,
    moved,
    kept: leg === 'both' ? '240 V' : legFixed ? 'fixed' : movable ? null : 'shared neutral',
  };
}

export function movesOf(panel: Panel, sides: Sides): CircuitMove[] {
  return movesBetween(panel.present, sides).map((i) => {
    const { id, title } = panel.household.circuits[panel.movable[i]!]!;
    const legs = (side: string | undefined) => (side === '2' ? ('L2' as const) : ('L1' as const));
    return { id, title: title ?? id, from: legs(panel.present[i]), to: legs(sides[i]) };
  });
}
