/** The household's file with what the reader changed: a scenario like any other, with a hash of its own. */
import type { Scenario } from '@rideout/sim';
import { withModulesEverywhere } from './modules-everywhere.ts';
import type { RunSettings } from './page-settings.ts';

type Household = Scenario['alternatives'][number]['household'];

/** Changes hold for every household (alternative) of the scenario; those they make alike become one. The same object when nothing is changed. */
export function changedScenario(scenario: Scenario, settings: RunSettings): Scenario {
  const { months, modulesPerUnit, stormLed, carriedOutBy } = settings;
  let changed = scenario;
  if (months !== undefined) changed = { ...changed, outage: startingIn(months, changed.outage) };
  if (stormLed !== undefined) changed = { ...changed, outage: { ...changed.outage, stormLed } };
  if (modulesPerUnit !== undefined) changed = withModulesEverywhere(changed, modulesPerUnit);
  if (carriedOutBy !== undefined) changed = inEveryHousehold(changed, switchedBy(carriedOutBy));
  return changed;
}

/** A random start in these months takes the place of a fixed one. */
function startingIn(months: readonly number[], outage: Scenario['outage']): Scenario['outage'] {
  const changed = { ...outage, months: [...months] };
  delete changed.startLocal;
  return changed;
}

function inEveryHousehold(scenario: Scenario, change: (household: Household) => Household): Scenario {
  const alternatives = scenario.alternatives.map((a) => ({ ...a, household: change(a.household) }));
  return { ...scenario, alternatives };
}

function switchedBy(carriedOutBy: 'person' | 'switch') {
  return (household: Household): Household => ({
    ...household,
    strategies: household.strategies.map((strategy) => ({ ...strategy, carriedOutBy })),
  });
}
