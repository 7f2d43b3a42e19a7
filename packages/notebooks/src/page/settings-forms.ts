/** The page's controls. Each form is an input: it has a `value` and sends `input` when a person changes it. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import type { Scenario } from '@rideout/sim';
import { monthsText } from './months-text.ts';
import { stormWords, switchWords } from './setting-words.ts';
import { dateText } from './start-text.ts';
import {
  MOST_DRAWS,
  MOST_MODULES,
  type Choices,
  type RunSettings,
  type ViewSettings,
} from './page-settings.ts';
import { wholeNumber } from './whole-number.ts';

/** A form whose `value` is settings of type T. */
export type SettingsForm<T> = HTMLElement & { value: T };

const AS_IN_FILE = '';

/** What a list is chosen from, and what each is called. */
export function ids(list: readonly { readonly id: string }[]): string[] {
  return list.map((item) => item.id);
}
export function titleOf(
  list: readonly { readonly id: string; readonly title: string }[],
): (id: string) => string {
  return (id) => list.find((item) => item.id === id)!.title;
}

export function viewForm(choices: Choices, start: ViewSettings): SettingsForm<ViewSettings> {
  return Inputs.form(
    {
      alternativeId: ofHouseholds(
        Inputs.select(ids(choices.alternatives), {
          label: 'One of the households in the file',
          format: titleOf(choices.alternatives),
          value: start.alternativeId,
        }),
      ),
      strategyIds: Inputs.checkbox(ids(choices.strategies), {
        format: titleOf(choices.strategies),
        value: start.strategyIds,
      }),
    },
    {
      template: ({ alternativeId, strategyIds }) =>
        html`<div class="controls screen-only">
          ${group('Household shown', alternativeId)}${group('Strategies shown', strategyIds)}
        </div>`,
    },
  );
}

/** Marks the choice of households: its titles follow the settings. */
export function ofHouseholds<T extends HTMLElement>(choice: T): T {
  choice.dataset['households'] = '';
  return choice;
}

/** Settings that a page leaves out of its controls: it decides them itself. They stay as in the household's file. */
type Optional = 'months' | 'stormLed' | 'modulesPerUnit' | 'carriedOutBy';

/** Text values stand for settings: '' is "as in the household's file". */
export function runForm(
  scenario: Scenario,
  asked: RunSettings,
  without: readonly Optional[] = [],
): SettingsForm<RunSettings> {
  const kept = (settings: RunSettings): RunSettings =>
    without.reduce((rest, name) => ({ ...rest, [name]: undefined }), settings);
  const start = kept(asked);
  const form = Inputs.form(runInputs(scenario, start), {
    template: (i) => {
      const some = (legend: string, ...names: Optional[]) => {
        const offered = names.filter((n) => !without.includes(n)).map((n) => i[n]);
        return offered.length > 0 ? group(legend, ...offered) : '';
      };
      return html`<div class="controls screen-only">
        ${some('The outage', 'months', 'stormLed')} ${some('The household', 'modulesPerUnit', 'carriedOutBy')}
        ${group('How surely', i.draws, i.seed)}
      </div>`;
    },
  });
  type Shown = typeof form.value;
  const read = (shown: Shown): RunSettings => {
    const [modules, storm] = [chosen(shown.modulesPerUnit), chosen(shown.stormLed)];
    return {
      months: chosen(shown.months)?.split(',').map(Number),
      stormLed: storm === undefined ? undefined : storm === 'true',
      modulesPerUnit: modules === undefined ? undefined : Number(modules),
      carriedOutBy: chosen(shown.carriedOutBy) as 'person' | 'switch' | undefined,
      draws: shown.draws,
      seed: shown.seed || start.seed,
    };
  };
  const write = (set: RunSettings): Shown => shownOf(kept(set));
  const shownOf = (settings: RunSettings): Shown => ({
    months: said(settings.months),
    stormLed: said(settings.stormLed),
    modulesPerUnit: said(settings.modulesPerUnit),
    carriedOutBy: said(settings.carriedOutBy),
    draws: settings.draws,
    seed: settings.seed,
  });
  return translated(form, read, write);
}

/** Undefined: as in the file; so is a value that is not offered (null). */
function chosen(value: string | null): string | undefined {
  return value === null || value === AS_IN_FILE ? undefined : value;
}

function runInputs(scenario: Scenario, start: RunSettings) {
  return {
    months: choice(
      'Begins in',
      monthChoices(start.months),
      ownMonths(scenario),
      monthsLabel,
      said(start.months),
    ),
    stormLed: choice(
      'The storm that took the grid',
      ['true', 'false'],
      stormLabel(String(scenario.outage.stormLed)),
      stormLabel,
      said(start.stormLed),
    ),
    modulesPerUnit: choice(
      'Battery modules on each unit',
      moduleChoices(start.modulesPerUnit),
      ownModules(scenario),
      (n) => n,
      said(start.modulesPerUnit),
    ),
    carriedOutBy: choice(
      'Circuits are switched',
      ['person', 'switch'],
      'each strategy’s own way',
      switchLabel,
      said(start.carriedOutBy),
    ),
    draws: wholeNumber([1, MOST_DRAWS], { label: 'Simulated outages', value: start.draws }),
    seed: Inputs.text({
      label: 'Seed (same seed, same outages)',
      value: start.seed,
      maxlength: 80,
      spellcheck: false,
    }),
  };
}

function choice(
  label: string,
  values: readonly string[],
  own: string,
  format: (value: string) => string,
  value: string,
) {
  return Inputs.select([AS_IN_FILE, ...values], {
    label,
    value,
    format: (v) => (v === AS_IN_FILE ? `${own} (as in the file)` : format(v)),
  });
}

export const SEASONS = ['12,1,2', '3,4,5', '6,7,8', '9,10,11'];
const MONTHS = Array.from({ length: 12 }, (_, i) => String(i + 1));

function monthChoices(start: readonly number[] | undefined): string[] {
  const usual = [...SEASONS, ...MONTHS];
  return start === undefined || usual.includes(said(start)) ? usual : [said(start), ...usual];
}

function moduleChoices(start: number | undefined): string[] {
  const most = Math.min(MOST_MODULES, Math.max(6, start ?? 0));
  return Array.from({ length: most }, (_, i) => String(i + 1));
}

const monthsLabel = (months: string) => monthsText(months.split(',').map(Number));
const stormLabel = (led: string) => stormWords(led === 'true');
const switchLabel = (by: string) => switchWords(by === 'person' ? 'person' : 'switch');

function ownMonths({ outage }: Scenario): string {
  const { startLocal, months = [] } = outage;
  return startLocal ? (dateText(startLocal.split('T')[0]!) ?? startLocal) : monthsText(months);
}

function ownModules({ alternatives }: Scenario): string {
  const numbers = alternatives.flatMap(({ household }) =>
    household.units.map((unit) => unit.battery.modules),
  );
  return [...new Set(numbers)].sort((a, b) => a - b).join(' or ');
}

function said(value: string | number | boolean | readonly number[] | undefined): string {
  return value === undefined ? AS_IN_FILE : String(value);
}

export function group(legend: string, ...inputs: readonly HTMLElement[]): HTMLElement {
  return html`<fieldset>
    <legend>${legend}</legend>
    <div class="fields">${inputs}</div>
  </fieldset>`;
}

/** The form in an element whose value is read and set in other terms; the form's events pass through it. */
export function translated<A, B>(
  form: HTMLElement & { value: A },
  read: (a: A) => B,
  write: (b: B) => A,
): SettingsForm<B> {
  const outer = html`<div>${form}</div>`;
  Object.defineProperty(outer, 'value', {
    get: () => read(form.value),
    set: (value: B) => (form.value = write(value)),
  });
  return outer as SettingsForm<B>;
}

/** Settings that stay as they are, on a page that has no controls for them. */
export function fixedForm<T>(value: T): SettingsForm<T> {
  const form = html`<span></span>`;
  Object.defineProperty(form, 'value', { get: () => value, set: () => undefined });
  return form as SettingsForm<T>;
}
