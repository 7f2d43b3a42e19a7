/** Whether the legs can carry an assignment by its nameplates. What trips in use, the simulation finds. */
import { CONTINUOUS_SHARE } from '../../power/continuous-load.ts';
import { LEG_V } from '../../power/nominal-volts.ts';
import type { Circuit, HouseholdSpec } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { nameplateOf, type Nameplate } from './nameplate.ts';
import { circuitsOn, type Panel, type Sides } from './panel.ts';

export type Leg = 'L1' | 'L2';
export const LEGS: readonly Leg[] = ['L1', 'L2'];

export interface LegLoad extends Nameplate {
  readonly leg: Leg;
}

/** What hangs on a leg, half of the 240 V circuits included. */
export function legLoad(circuits: readonly Circuit[], leg: Leg): LegLoad {
  const parts = circuits.flatMap((circuit) => {
    const share = shareOn(leg, circuit);
    return share === 0 ? [] : scaled(nameplateOf(circuit), share);
  });
  return {
    leg,
    allW: parts.reduce((sum, part) => sum + part.allW, 0),
    unattendedW: parts.reduce((sum, part) => sum + part.unattendedW, 0),
    startExtraW: Math.max(0, ...parts.map((part) => part.startExtraW)),
  };
}

/** Of a circuit's watts: a leg carries half of what is at 240 V. */
export function shareOn(leg: Leg, circuit: Pick<Circuit, 'leg'>): number {
  return circuit.leg === 'both' ? 0.5 : circuit.leg === leg ? 1 : 0;
}

function scaled(nameplate: Nameplate, share: number): Nameplate {
  return {
    allW: share * nameplate.allW,
    unattendedW: share * nameplate.unattendedW,
    startExtraW: share * nameplate.startExtraW,
  };
}

/** Watts that a unit and the breaker behind it carry for hours. */
export function continuousLimitW({ inverter, wiring }: UnitSpec): number {
  const breakerW = wiring?.breakerA === undefined ? Infinity : CONTINUOUS_SHARE * LEG_V * wiring.breakerA;
  return Math.min(inverter.continuousW, breakerW);
}

export function unitOn({ units }: HouseholdSpec, leg: Leg): UnitSpec {
  return units.find((unit) => unit.leg === leg)!;
}

/** By how many watts a leg asks too much: beyond what it carries for hours, or can start with all that running. */
function excessW(household: HouseholdSpec, load: LegLoad): number {
  const unit = unitOn(household, load.leg);
  const hoursW = load.unattendedW - continuousLimitW(unit);
  const startW = load.unattendedW + load.startExtraW - unit.inverter.surgeW;
  return Math.max(0, hoursW, startW);
}

/** Tells whether an assignment asks no more of the legs than they carry, or than is asked of them now. */
export function withinLimits(panel: Panel): (sides: Sides) => boolean {
  const worst = (sides: Sides) => {
    const circuits = circuitsOn(panel, sides);
    return Math.max(...LEGS.map((leg) => excessW(panel.household, legLoad(circuits, leg))));
  };
  const now = worst(panel.present);
  return (sides) => worst(sides) <= now;
}
