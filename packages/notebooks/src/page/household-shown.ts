/** The household chosen, as it stands in what was simulated: one may stand for several that a setting made alike. */
import { changedScenario } from './changed-scenario.ts';
import { standInFor } from './modules-everywhere.ts';
import type { OpenPage } from './open-page.ts';
import type { RunSettings, ViewSettings } from './page-settings.ts';
import type { SettingsForm } from './settings-forms.ts';
import type { Scenario } from '@rideout/sim';

type Page = Pick<OpenPage, 'study' | 'runForm'>;

/** @param known figures of the households there are; they may still be those of earlier settings */
export function shownIn(
  page: Page,
  known: readonly { readonly alternativeId: string }[],
  view: ViewSettings,
): ViewSettings {
  const isKnown = (id: string) => known.some(({ alternativeId }) => alternativeId === id);
  const standIn = standInFor(page.study.scenario, page.runForm.value.modulesPerUnit, view.alternativeId);
  const alternativeId = [standIn, view.alternativeId].find(isKnown) ?? known[0]?.alternativeId ?? standIn;
  return { ...view, alternativeId };
}

/** Its place among the households that are simulated. */
export function placeShown({ study, runForm }: Page, { alternativeId }: ViewSettings): number {
  const id = standInFor(study.scenario, runForm.value.modulesPerUnit, alternativeId);
  return changedScenario(study.scenario, runForm.value).alternatives.findIndex((a) => a.id === id);
}

/** The choice of households, each under the title that it has by the settings, those that are alike once. */
export function titledAsChanged(
  choice: HTMLSelectElement | null | undefined,
  scenario: Scenario,
  runForm: SettingsForm<RunSettings>,
): void {
  if (!choice) return;
  const title = () => {
    const { alternatives } = changedScenario(scenario, runForm.value);
    const standIns = scenario.alternatives.map(({ id }) =>
      standInFor(scenario, runForm.value.modulesPerUnit, id),
    );
    standIns.forEach((standIn, i) => {
      const option = choice.options[i]!;
      option.textContent = alternatives.find((a) => a.id === standIn)!.title;
      option.hidden = standIns.indexOf(standIn) !== i;
    });
  };
  runForm.addEventListener('input', title);
  title();
}
