/** So many battery modules on each unit of every household: those that no longer differ are one, under a title that is true. */
import type { Scenario } from '@rideout/sim';
import { counted } from '../charts/counted.ts';
import { freshId } from './house-draft.ts';

type Alternative = Scenario['alternatives'][number];

export function modulesWords(modules: number): string {
  return `${counted(modules, 'battery module')} on each unit`;
}

export function withModulesEverywhere(scenario: Scenario, modules: number): Scenario {
  return { ...scenario, alternatives: standIns(scenario, modules).map(({ alternative }) => alternative) };
}

/** The household that stands for this one where there are so many modules on each unit; as in the file: itself. */
export function standInFor(scenario: Scenario, modules: number | undefined, alternativeId: string): string {
  if (modules === undefined) return alternativeId;
  const found = standIns(scenario, modules).find(({ standsFor }) => standsFor.includes(alternativeId));
  return found?.alternative.id ?? alternativeId;
}

interface Changed {
  readonly own: Alternative;
  readonly household: Alternative['household'];
}

interface StandIn {
  readonly alternative: Alternative;
  /** Ids in the file. */
  readonly standsFor: readonly string[];
}

function standIns(scenario: Scenario, modules: number): StandIn[] {
  const groups = alikeWith(scenario, modules);
  const taken = [...scenario.alternatives];
  return groups.map((group) => {
    const alternative = asInFile(group) ?? renamed(group[0]!, modules, groups.length, taken);
    taken.push(alternative);
    return { alternative, standsFor: group.map(({ own }) => own.id) };
  });
}

/** Households that are the same once all have so many modules, in the file's order. */
function alikeWith({ alternatives }: Scenario, modules: number): Changed[][] {
  const groups = new Map<string, Changed[]>();
  for (const own of alternatives) {
    const household = withModules(own.household, modules);
    const kind = JSON.stringify(household);
    groups.set(kind, [...(groups.get(kind) ?? []), { own, household }]);
  }
  return [...groups.values()];
}

/** The one of them that the change leaves as it is: its id and its title stay true. */
function asInFile(group: readonly Changed[]): Alternative | undefined {
  return group.find(({ own, household }) => JSON.stringify(own.household) === JSON.stringify(household))?.own;
}

/** Ids and titles tell of modules in whatever words they like: a household that was changed gets others. */
function renamed(
  { own, household }: Changed,
  modules: number,
  groups: number,
  taken: readonly Alternative[],
): Alternative {
  const title = groups === 1 ? modulesWords(modules) : `${own.title}, but with ${modulesWords(modules)}`;
  return { id: freshId(`modules-${modules}`, taken), title, household };
}

function withModules(household: Alternative['household'], modules: number): Alternative['household'] {
  const units = household.units.map((unit) => ({ ...unit, battery: { ...unit.battery, modules } }));
  return { ...household, units };
}
