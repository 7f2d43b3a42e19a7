/** Everything a page starts from: its household, its controls, its link. */
import { embeddedStudy, type EmbeddedStudy } from './embedded-study.ts';
import {
  choicesOf,
  ownSettings,
  settingsFromHash,
  settingsHash,
  type Choices,
  type PageSettings,
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

/** What a page does in its own way. */
export interface PageMaking {
  readonly study?: (embedded: EmbeddedStudy) => EmbeddedStudy;
  readonly own?: (usual: PageSettings, study: EmbeddedStudy) => PageSettings;
  readonly runForm?: typeof runForm;
  readonly viewForm?: typeof viewForm;
}

/** Controls set from the link, and the link kept in step with the controls from then on. */
export function openPage(making: PageMaking = {}): OpenPage {
  const study = (making.study ?? ((embedded) => embedded))(embeddedStudy());
  const choices = choicesOf(study.scenario);
  const usual = ownSettings(study, choices);
  const own = making.own?.(usual, study) ?? usual;
  const { settings, complaints } = settingsFromHash(location.hash, own, choices);
  const page = {
    study,
    choices,
    complaints,
    runForm: (making.runForm ?? runForm)(study.scenario, settings.run),
    viewForm: (making.viewForm ?? viewForm)(choices, settings.view),
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
