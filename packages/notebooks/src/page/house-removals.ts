/** Taking something away that other parts name: they let go of it. */
import { listed, type ScenarioSpec } from '@rideout/sim';

type Unit = ScenarioSpec['units'][number];
type LadderStep = NonNullable<ScenarioSpec['ladder']>['steps'][number];
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
  return {
    ...spec,
    circuits,
    strategies,
    ...(alternatives ? { alternatives } : {}),
    ...ladderWithout(spec, [prefix]),
  };
}

/**
 * The ladder without anything at or under these paths. A step that brought nothing else, or did nothing else, goes with
 * it, and whoever needed that step no longer does; a ladder without steps is none.
 */
function ladderWithout({ ladder }: ScenarioSpec, prefixes: readonly string[]): Pick<ScenarioSpec, 'ladder'> {
  if (ladder === undefined) return {};
  const stays = (path: string) => !prefixes.some((prefix) => isAtOrUnder(path, prefix));
  const kept = ladder.steps.filter((step) => hasPoint(itemWithout(step, stays), step));
  const ids = kept.map(({ id }) => id);
  const steps = kept.map((step) => ({
    ...itemWithout(step, stays),
    needs: (step.needs ?? []).filter((id) => ids.includes(id)),
  }));
  const start = itemWithout(ladder.start, stays);
  return { ladder: steps.length > 0 ? { ...ladder, start, steps } : undefined };
}

/** Whether a step is still for something, of what it was for before. */
function hasPoint(after: LadderStep, before: LadderStep): boolean {
  if (before.brings !== undefined && after.brings === undefined) return false;
  return [after.change, after.add, after.brings, after.strategy].some((x) => x !== undefined);
}

type LadderItem = Pick<LadderStep, 'change' | 'add' | 'brings'> & { readonly without?: string[] | undefined };

/** Without the paths that do not stay, and without keys of which nothing stays. */
function itemWithout<T extends LadderItem>(item: T, stays: (path: string) => boolean): T {
  const { change, add, brings, without, ...rest } = item;
  const staying = <V>(values: Record<string, V> | undefined) =>
    Object.entries(values ?? {}).filter(([path]) => stays(path));
  const some = (key: string, entries: readonly unknown[], value: unknown) =>
    entries.length > 0 ? { [key]: value } : {};
  const [changes, adds] = [staying(change), staying(add)];
  const [brought, missing] = [(brings ?? []).filter(stays), (without ?? []).filter(stays)];
  return {
    ...rest,
    ...some('change', changes, Object.fromEntries(changes)),
    ...some('add', adds, Object.fromEntries(adds)),
    ...some('brings', brought, brought),
    ...some('without', missing, missing),
  } as T;
}

/** What is said to change, without anything at or under this path. */
function withoutChanges<T extends { change?: Record<string, unknown> | undefined }>(
  item: T,
  prefix: string,
): T {
  return item.change ? { ...item, change: withoutPaths(item.change, prefix) } : item;
}

/** The second unit gone, and a line about what became of the circuits that it fed. */
export function withoutSecondUnit(spec: ScenarioSpec): { spec: ScenarioSpec; note: string } {
  const [kept, gone] = spec.units as [Unit, Unit];
  const without = lettingGoOfUnit(spec, gone);
  const only240V = spec.circuits.filter(({ leg }) => leg === 'both');
  if (only240V.length > 0)
    return {
      spec: { ...without, units: [{ ...kept, leg: 'both' }] },
      note: `One unit makes no 240 V: ${namesOf(only240V)} get${only240V.length === 1 ? 's' : ''} nothing now. “Feeds leg” of the unit that stays now says both, so every other circuit stays where it was. ${sharedWords(spec)}Two legs fed by one 120 V unit can overload a neutral that circuits share, and no breaker opens for it: have a licensed electrician find and part such circuits first.`,
    };
  const moved = spec.circuits.filter(({ leg }) => leg === gone.leg);
  const circuits = spec.circuits.map((c) => (moved.includes(c) ? { ...c, leg: kept.leg } : c));
  const strategies = without.strategies.map((strategy) =>
    strategy.rules
      ? { ...strategy, rules: strategy.rules.map((rule) => byName(rule, spec.circuits)) }
      : strategy,
  );
  const note =
    moved.length > 0 ? `Moved to ${kept.leg}, the leg of the unit that stays: ${namesOf(moved)}.` : '';
  return { spec: { ...without, circuits, strategies, units: [kept] }, note };
}

/** Circuits that are known to share one, by name. */
function sharedWords({ circuits }: ScenarioSpec): string {
  const named = circuits.map(({ sharedNeutralWith }) => sharedNeutralWith);
  const shared = circuits.filter(({ id, sharedNeutralWith }) => sharedNeutralWith ?? named.includes(id));
  return shared.length > 0 ? `Do not bridge as it is: ${namesOf(shared)} share a neutral. ` : '';
}

/** A rule that went by legs holds the same circuits, now that they are all on one. */
function byName(rule: Rule, circuits: ScenarioSpec['circuits']): Rule {
  if (rule.by === 'sleep' || !rule.circuits.legs) return rule;
  const { legs, ids, ...rest } = rule.circuits;
  const held = circuits.filter((c) => legs.includes(c.leg) && (ids?.includes(c.id) ?? true));
  return { ...rule, circuits: { ...rest, ids: held.map(({ id }) => id) } };
}

/** Nobody puts to sleep, feeds, changes or buys a unit that is not there. */
function lettingGoOfUnit(spec: ScenarioSpec, { id }: Unit): ScenarioSpec {
  const strategies = spec.strategies.map((strategy) =>
    strategy.rules
      ? { ...strategy, rules: strategy.rules.filter((rule) => rule.by !== 'sleep' || rule.unit !== id) }
      : strategy,
  );
  const alternatives = spec.alternatives?.map((alternative) =>
    withoutChanges(withoutChanges(alternative, `units.${id}`), 'units.1'),
  );
  return {
    ...spec,
    strategies,
    ...(alternatives ? { alternatives } : {}),
    ...ladderWithout(spec, [`units.${id}`, 'units.1']),
  };
}

function namesOf(circuits: ScenarioSpec['circuits']): string {
  return listed(circuits.map(({ id, title }) => title ?? id));
}

function lettingGo(rule: Rule, id: string): Rule[] {
  if (rule.by === 'sleep' || !rule.circuits.ids?.includes(id)) return [rule];
  const ids = rule.circuits.ids.filter((other) => other !== id);
  return ids.length === 0 ? [] : [{ ...rule, circuits: { ...rule.circuits, ids } }];
}

function withoutPaths(change: Readonly<Record<string, unknown>>, prefix: string): Record<string, unknown> {
  return Object.fromEntries(Object.entries(change).filter(([path]) => !isAtOrUnder(path, prefix)));
}

function isAtOrUnder(path: string, prefix: string): boolean {
  return path === prefix || path.startsWith(`${prefix}.`);
}
