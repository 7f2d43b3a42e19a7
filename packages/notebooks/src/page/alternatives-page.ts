/** What the page "One battery or two?" starts from. */
import type { Scenario } from '@rideout/sim';
import { embeddedStudy, type EmbeddedStudy } from './embedded-study.ts';
import { oneStrategyForm, usualStrategy } from './one-strategy-form.ts';
import { openPage, type OpenPage } from './open-page.ts';
import type { PageSettings, ViewSettings } from './page-settings.ts';
import { runForm } from './settings-forms.ts';

/** The controls' household is the one compared with the first. How many modules there are is what is compared. */
export function openAlternatives(): OpenPage {
  return openPage({
    study: withSecondHousehold(embeddedStudy()),
    own: usualPair,
    runForm: (scenario, asked) => runForm(scenario, asked, ['modulesPerUnit']),
    viewForm: ({ alternatives, strategies }, start) =>
      oneStrategyForm({ alternatives: alternatives.slice(1), strategies }, start, {
        legend: 'Household compared',
        household: `Compared with “${alternatives[0]!.title}”`,
      }),
  });
}

/** What the two sides of the comparison are. */
export function pairShown({ alternativeId, strategyIds }: ViewSettings) {
  return { alternativeId, strategyId: strategyIds[0]! };
}

/** A file with one household is compared with the same household and one more module on each unit. */
export function withSecondHousehold(study: EmbeddedStudy): EmbeddedStudy {
  const [first, second] = study.scenario.alternatives;
  if (!first || second) return study;
  const units = first.household.units.map((unit) => ({
    ...unit,
    battery: { ...unit.battery, modules: unit.battery.modules + 1 },
  }));
  const more: Scenario['alternatives'][number] = {
    id: first.id === 'one-more' ? 'one-more-module' : 'one-more',
    title: 'One more battery module on each unit',
    household: { ...first.household, units },
  };
  return {
    scenario: { ...study.scenario, alternatives: [first, more] },
    seed: study.seed,
    draws: study.draws,
  };
}

function usualPair(usual: PageSettings, { scenario }: EmbeddedStudy): PageSettings {
  const [first, second] = scenario.alternatives;
  const strategyIds = [usualStrategy(first!.household.strategies)];
  return { ...usual, view: { alternativeId: second!.id, strategyIds } };
}

/** Which leg each unit feeds. */
export function unitLegs({ alternatives }: Scenario): Record<string, string> {
  const units = alternatives.flatMap(({ household }) => household.units);
  return Object.fromEntries(units.map(({ id, leg }) => [id, leg]));
}
