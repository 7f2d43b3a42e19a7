/** Taking something away that other parts name: they let go of it. */
import type { ScenarioSpec } from '@rideout/sim';

type Rule = NonNullable<ScenarioSpec['strategies'][number]['rules']>[number];

/** Rules that named the circuit alone go with it; so do changes of it in alternatives and on the ladder. */
export function withoutCircuit(spec: ScenarioSpec, c: number): ScenarioSpec {
  const { id } = spec.circuits[c]!;
  const prefix = `circuits.${id}`;
  const strategies = spec.strategies.map((strategy) =>
    strategy.rules ? { ...strategy, rules: strategy.rules.flatMap((rule) => lettingGo(rule, id)) } : strategy,
  );
  const alternatives = spec.alternatives?.map((alternative) => withoutChanges(alternative, prefix));
  const circuits = spec.circuits
    .filter((_, i) => i !== c)
    .map(({ sharedNeutralWith, ...circuit }) =>
      sharedNeutralWith === undefined || sharedNeutralWith === id
        ? circuit
        : { ...circuit, sharedNeutralWith },
    );
  const ladder = spec.ladder && {
    ...spec.ladder,
    start: withoutChanges(spec.ladder.start, prefix),
    steps: spec.ladder.steps.map((step) => withoutChanges(step, prefix)),
  };
  return {
    ...spec,
    circuits,
    strategies,
    ...(alternatives ? { alternatives } : {}),
    ...(ladder ? { ladder } : {}),
  };
}

/** What is said to change, without anything at or under this path. */
function withoutChanges<T extends { change?: Record<string, unknown> | undefined }>(
  item: T,
  prefix: string,
): T {
  return item.change ? { ...item, change: withoutPaths(item.change, prefix) } : item;
}

function lettingGo(rule: Rule, id: string): Rule[] {
  if (rule.by === 'sleep' || !rule.circuits.ids?.includes(id)) return [rule];
  const ids = rule.circuits.ids.filter((other) => other !== id);
  return ids.length === 0 ? [] : [{ ...rule, circuits: { ...rule.circuits, ids } }];
}

function withoutPaths(change: Readonly<Record<string, unknown>>, prefix: string): Record<string, unknown> {
  const entries = Object.entries(change).filter(
    ([path]) => path !== prefix && !path.startsWith(`${prefix}.`),
  );
  return Object.fromEntries(entries);
}
