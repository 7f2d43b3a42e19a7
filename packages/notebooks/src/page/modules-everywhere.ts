/** So many battery modules on each unit of every household: those that no longer differ are one, under a title that is true. */
import type { Scenario } from '@rideout/sim';
import { counted } from '../charts/counted.ts';

type Alternative = Scenario['alternatives'][number];

export function modulesWords(modules: number): string {
  return `${counted(modules, 'battery module')} on each unit`;
}

export function withModulesEverywhere(scenario: Scenario, modules: number): Scenario {
  const groups = alikeWith(scenario, modules);
  return { ...scenario, alternatives: groups.map((group) => stands(group, modules, groups.length)) };
}

/** The household that stands for this one where there are so many modules on each unit; as in the file: itself. */
export function standInFor(scenario: Scenario, modules: number | undefined, alternativeId: string): string {
  if (modules === undefined) return alternativeId;
  const group = alikeWith(scenario, modules).find((g) => g.some(({ own }) => own.id === alternativeId));
  return group?.[0]!.own.id ?? alternativeId;
}

interface Changed {
  readonly own: Alternative;
  readonly household: Alternative['household'];
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

/** Titles tell of modules in whatever words they like: they stay only where nothing was changed. */
function stands(group: readonly Changed[], modules: number, groups: number): Alternative {
  const { own, household } = group[0]!;
  const asInFile = group.find((one) => JSON.stringify(one.own.household) === JSON.stringify(one.household));
  const title = asInFile
    ? asInFile.own.title
    : groups === 1
      ? modulesWords(modules)
      : `${own.title}, but with ${modulesWords(modules)}`;
  return { ...own, title, household };
}

function withModules(household: Alternative['household'], modules: number): Alternative['household'] {
  const units = household.units.map((unit) => ({ ...unit, battery: { ...unit.battery, modules } }));
  return { ...household, units };
}
