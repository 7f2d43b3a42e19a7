/** A household compiled for the minute loop: everything that no draw changes. */
import { bankCapacityWh, unitParameters, type UnitParameters } from '../power/unit-parameters.ts';
import { feedsLeg } from '../scenario/feeds-leg.ts';
import type { UnitSpec } from '../scenario/schema.ts';
import type { HouseholdSpec } from '../scenario/scenario.ts';
import { compileStrategy } from '../shedding/compile-rules.ts';
import { planControl, type ControlPlan } from '../shedding/control.ts';
import { compileSources, type HouseholdSources } from './household-sources.ts';

export interface CompiledCircuit {
  readonly id: string;
  /** The unit that feeds it, or -1 for 240 V and for a leg that no unit feeds. */
  readonly unit: number;
  readonly is240V: boolean;
  readonly tier: number;
  readonly graceMinutes: number;
  /** Position in `needs`, or -1. */
  readonly need: number;
  /** Position in `groups`. */
  readonly group: number;
}

/** Circuits that every strategy switches together: same unit, voltage, tier and rules. */
export interface CircuitGroup {
  readonly circuits: readonly number[];
  /** The first of them: what is allowed to it is allowed to all. */
  readonly first: number;
  readonly unit: number;
  readonly is240V: boolean;
  readonly tier: number;
  /** Circuits whose wants are watched: tier 1, or serving a need. */
  readonly watched: readonly number[];
}

export interface Household {
  readonly units: readonly UnitSpec[];
  readonly parameters: readonly UnitParameters[];
  readonly capacityWh: readonly number[];
  readonly stopsTogether: boolean;
  readonly circuits: readonly CompiledCircuit[];
  readonly groups: readonly CircuitGroup[];
  readonly needs: readonly string[];
  readonly strategies: readonly ControlPlan[];
  readonly has240V: boolean;
  /** Undefined where nothing but panels brings energy back. */
  readonly sources: HouseholdSources | undefined;
}

/** @param needs the study's needs, so that positions agree between alternatives */
export function compileHousehold(scenario: HouseholdSpec, needs: readonly string[]): Household {
  const { units, circuits, person } = scenario;
  const tiers = circuits.map((c) => c.tier);
  const strategies = scenario.strategies.map((s) =>
    planControl(compileStrategy(s, circuits, units), person, tiers),
  );
  const keys = circuits.map((c, i) => groupKey(c.leg, c.tier, i, strategies));
  const groupKeys = [...new Set(keys)];
  const compiled = circuits.map((c, i) => ({
    id: c.id,
    unit: units.findIndex((u) => feedsLeg(u.leg, c.leg)),
    is240V: c.leg === 'both',
    tier: c.tier,
    graceMinutes: c.graceMinutes,
    need: c.need === undefined ? -1 : needs.indexOf(c.need),
    group: groupKeys.indexOf(keys[i]!),
  }));
  return {
    ...compileUnits(units),
    stopsTogether: scenario.pair.stopsTogether,
    circuits: compiled,
    groups: groupKeys.map((_, g) => gather(compiled, g)),
    needs,
    strategies,
    has240V: compiled.some((c) => c.is240V),
    sources: compileSources(scenario),
  };
}

function compileUnits(units: readonly UnitSpec[]): Pick<Household, 'units' | 'parameters' | 'capacityWh'> {
  return {
    units,
    parameters: units.map(unitParameters),
    capacityWh: units.map((u) => bankCapacityWh(u.battery)),
  };
}

/** The same household with other figures of its units; their ids and legs stay. */
export function withUnits(household: Household, units: readonly UnitSpec[]): Household {
  return { ...household, ...compileUnits(units) };
}

function groupKey(leg: string, tier: number, circuit: number, strategies: readonly ControlPlan[]): string {
  const held = strategies.map((s) => s.strategy.rules.map((r) => r.holds[circuit]).join('')).join('/');
  return `${leg} ${tier} ${held}`;
}

function gather(circuits: readonly CompiledCircuit[], group: number): CircuitGroup {
  const members = circuits.flatMap((c, i) => (c.group === group ? i : []));
  const { unit, is240V, tier } = circuits[members[0]!]!;
  const watched = members.filter((i) => circuits[i]!.tier === 1 || circuits[i]!.need >= 0);
  return { circuits: members, first: members[0]!, unit, is240V, tier, watched };
}
