/** Everything a page starts from: its household, its controls, its link. */
import type { Look } from '../charts/look.ts';
import { embeddedStudy, type EmbeddedStudy } from './embedded-study.ts';
import { titledAsChanged } from './household-shown.ts';
import { lookForm, lookPart, usualLook, type LookShown } from './look-form.ts';
import { PageLink, type LinkPart } from './page-link.ts';
import { choicesOf, ownSettings, type Choices, type PageSettings } from './page-settings.ts';
import type { RunSettings, ViewSettings } from './page-settings.ts';
import { settingsFromHash } from './page-settings.ts';
import { fixedForm, runForm, viewForm, type SettingsForm } from './settings-forms.ts';
import { settingsPart } from './settings-part.ts';

export interface OpenPage {
  readonly study: EmbeddedStudy;
  readonly choices: Choices;
  readonly runForm: SettingsForm<RunSettings>;
  readonly viewForm: SettingsForm<ViewSettings>;
  /** How times and temperatures are written; empty where the page writes neither. */
  readonly lookForm: SettingsForm<Look>;
  /** What it carries, and what of it this page could not follow. */
  readonly link: PageLink;
}

/** What a page does in its own way. */
export interface PageMaking {
  readonly study?: EmbeddedStudy;
  readonly own?: (usual: PageSettings, study: EmbeddedStudy) => PageSettings;
  /** 'none': nothing is simulated there. */
  readonly runForm?: typeof runForm | 'none';
  readonly viewForm?: typeof viewForm;
  /** Left out: the clock, where the outage begins at a fixed time. */
  readonly shows?: Partial<LookShown>;
  /** What else stands in the link. */
  readonly parts?: readonly LinkPart[];
}

/** Controls set from the link, and the link kept in step with the controls from then on. */
export function openPage(making: PageMaking = {}): OpenPage {
  const study = making.study ?? embeddedStudy();
  const choices = choicesOf(study.scenario);
  const usual = ownSettings(study, choices);
  const own = making.own?.(usual, study) ?? usual;
  const { settings } = settingsFromHash(location.hash, own, choices); // a choice may be there only by the link
  const forms = {
    runForm:
      making.runForm === 'none'
        ? fixedForm(own.run)
        : (making.runForm ?? runForm)(study.scenario, settings.run),
    viewForm: (making.viewForm ?? viewForm)(choices, settings.view),
  };
  titledAsChanged(
    forms.viewForm.querySelector<HTMLSelectElement>('[data-households] select'),
    study.scenario,
    forms.runForm,
  );
  const shows = {
    clock: study.scenario.outage.startLocal !== undefined,
    temperature: false,
    ...making.shows,
  };
  const look = lookForm(usualLook(), shows);
  const link = new PageLink([settingsPart(forms, own, choices), ...(making.parts ?? []), lookPart(look)]);
  return { study, choices, ...forms, lookForm: look, link };
}
