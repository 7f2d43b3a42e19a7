/** The settings that every page shares, as a part of its link. */
import { saidIn, wordSaid, type LinkPart, type TakenWords } from './page-link.ts';
import {
  SETTING_WORDS,
  settingsFromHash,
  settingsHash,
  settingsSaid,
  type Choices,
  type PageSettings,
  type RunSettings,
  type ViewSettings,
} from './page-settings.ts';
import type { SettingsForm } from './settings-forms.ts';

interface Forms {
  readonly runForm: SettingsForm<RunSettings>;
  readonly viewForm: SettingsForm<ViewSettings>;
}

export function settingsPart({ runForm, viewForm }: Forms, own: PageSettings, choices: Choices): LinkPart {
  const now = (): PageSettings => ({ run: runForm.value, view: viewForm.value });
  return {
    words: SETTING_WORDS,
    forms: [runForm, viewForm],
    say: () => saidIn(settingsHash(now(), own)),
    take: (said) => {
      const { settings, complaints } = settingsFromHash(said.toString(), own, choices);
      runForm.value = settings.run;
      viewForm.value = settings.view;
      const asked = saidIn(settingsHash(settings, own));
      const { aside = [], complaints: shorter } = notKept(asked, settingsSaid(now()));
      return { complaints: [...complaints, ...shorter], aside };
    },
  };
}

/** A page leaves out controls that it decides itself, and may take one where several are named. */
function notKept(asked: URLSearchParams, kept: URLSearchParams): TakenWords {
  const aside: string[] = [];
  const complaints: string[] = [];
  for (const [word, text] of asked) {
    const list = text.split(',');
    const taken = kept.get(word)?.split(',') ?? [];
    if (list.every((item) => taken.includes(item))) continue;
    if (list.length > 1 && taken.length === 1 && list.includes(taken[0]!))
      complaints.push(`The link says ${wordSaid(word, text)}; this page takes one of them, “${taken[0]!}”.`);
    else aside.push(word);
  }
  return { aside, complaints };
}
