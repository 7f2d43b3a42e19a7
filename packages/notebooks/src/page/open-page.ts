/** Everything a page starts from: its household, its controls, its link. */
import { embeddedStudy, type EmbeddedStudy } from './embedded-study.ts';
import {
  choicesOf,
  ownSettings,
  settingsFromHash,
  settingsHash,
  type Choices,
  type RunSettings,
  type ViewSettings,
} from './page-settings.ts';
import { runForm, viewForm, type SettingsForm } from './settings-forms.ts';

export interface OpenPage {
  readonly study: EmbeddedStudy;
  readonly choices: Choices;
  readonly runForm: SettingsForm<RunSettings>;
  readonly viewForm: SettingsForm<ViewSettings>;
  /** What the link asked for and this page cannot do. */
  readonly complaints: readonly string[];
}

/** Controls set from the link, and the link kept in step with the controls from then on. */
export function openPage(): OpenPage {
  const study = embeddedStudy();
  const choices = choicesOf(study.scenario);
  const own = ownSettings(study, choices);
  const { settings, complaints } = settingsFromHash(location.hash, own, choices);
  const page = {
    study,
    choices,
    complaints,
    runForm: runForm(study.scenario, settings.run),
    viewForm: viewForm(choices, settings.view),
  };
  const tellLink = () => {
    const hash = settingsHash({ run: page.runForm.value, view: page.viewForm.value }, own);
    history.replaceState(null, '', `#${hash}`);
  };
  for (const form of [page.runForm, page.viewForm]) form.addEventListener('input', tellLink);
  addEventListener('hashchange', () => {
    const asked = settingsFromHash(location.hash, own, choices).settings;
    page.runForm.value = asked.run;
    page.viewForm.value = asked.view;
    for (const form of [page.runForm, page.viewForm]) form.dispatchEvent(new CustomEvent('input'));
  });
  return page;
}
