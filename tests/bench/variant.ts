/** Larger and smaller households for measuring, made from a resolved scenario. Not for living in. */
import type { Scenario } from '../../packages/sim/src/index.ts';
import type { Appliance, Circuit, HouseholdSpec } from '../../packages/sim/src/scenario/scenario.ts';

type Strategy = HouseholdSpec['strategies'][number];
type Rule = Strategy['rules'][number];

/** What is left out stays as it is. */
export interface VariantOptions {
  readonly horizonDays?: number;
  /** Fewer: spread over the list, as they stand. More: each several times, the watts shared among the copies. */
  readonly circuits?: number;
  /** Fewer: those with rules first. More: over again, each time with charge levels 0.04 lower. */
  readonly strategies?: number;
  /** The first so many. */
  readonly alternatives?: number;
}

export function variant(scenario: Scenario, wanted: VariantOptions): Scenario {
  const { horizonDays = scenario.outage.horizonDays, alternatives = scenario.alternatives.length } = wanted;
  return {
    ...scenario,
    outage: { ...scenario.outage, horizonDays },
    alternatives: scenario.alternatives.slice(0, alternatives).map((a) => ({
      ...a,
      household: withStrategies(withCircuits(a.household, wanted.circuits), wanted.strategies),
    })),
  };
}

function withCircuits(household: HouseholdSpec, count = household.circuits.length): HouseholdSpec {
  const circuits = chooseCircuits(household.circuits, count);
  const idsFrom = (id: string) => circuits.filter((c) => c.from === id).map((c) => c.circuit.id);
  return {
    ...household,
    circuits: circuits.map((c) => c.circuit),
    strategies: household.strategies.map((s) => ({
      ...s,
      rules: s.rules.flatMap((rule) => renameIn(rule, idsFrom)),
    })),
  };
}

interface ChosenCircuit {
  readonly circuit: Circuit;
  /** The id it had. */
  readonly from: string;
}

function chooseCircuits(circuits: readonly Circuit[], count: number): ChosenCircuit[] {
  const have = circuits.length;
  const copies = Math.ceil(count / have);
  return Array.from({ length: count }, (_, i) => {
    const circuit = circuits[count < have ? Math.floor((i * have) / count) : i % have]!;
    const copy = Math.floor(i / have);
    const id = copy === 0 ? circuit.id : `${circuit.id}-${copy + 1}`;
    const appliances = circuit.appliances.map((a) => sharedAmong(a, copies));
    return { circuit: { ...circuit, id, appliances }, from: circuit.id };
  });
}

function sharedAmong(appliance: Appliance, copies: number): Appliance {
  if (appliance.kind === 'measured') return { ...appliance, scale: appliance.scale / copies };
  const shared = { ...appliance, runningW: appliance.runningW / copies };
  if ('startingW' in shared && shared.startingW !== undefined) shared.startingW /= copies;
  return shared;
}

/** The rule with the new circuits' ids; none when it named only circuits that are gone. */
function renameIn(rule: Rule, idsFrom: (id: string) => string[]): Rule[] {
  if (rule.by === 'sleep' || rule.circuits.ids === undefined) return [rule];
  const ids = rule.circuits.ids.flatMap(idsFrom);
  return ids.length === 0 ? [] : [{ ...rule, circuits: { ...rule.circuits, ids } }];
}

function withStrategies(household: HouseholdSpec, count = household.strategies.length): HouseholdSpec {
  const { strategies } = household;
  if (count === strategies.length) return household;
  const inOrder = [
    ...strategies.filter((s) => s.rules.length > 0),
    ...strategies.filter((s) => s.rules.length === 0),
  ];
  const made = Array.from({ length: count }, (_, i) =>
    again(inOrder[i % inOrder.length]!, Math.floor(i / inOrder.length)),
  );
  return { ...household, strategies: made };
}

function again(strategy: Strategy, time: number): Strategy {
  if (time === 0) return strategy;
  const lower = 0.04 * time;
  const rules = strategy.rules.map((rule) =>
    rule.by === 'charge'
      ? {
          ...rule,
          dropBelowFraction: rule.dropBelowFraction - lower,
          restoreAboveFraction: rule.restoreAboveFraction - lower,
        }
      : rule,
  );
  return { ...strategy, id: `${strategy.id}-${time + 1}`, title: `${strategy.title} (${time + 1})`, rules };
}
