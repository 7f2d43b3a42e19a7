/** What a reader can set on the page, and how a link carries it. */
import type { Scenario } from '@rideout/sim';
import type { EmbeddedStudy } from './embedded-study.ts';
import { saidIn, wordReader } from './page-link.ts';
import { linkText } from './page-words.ts';

/** What is simulated. `undefined`: as in the household's own file. */
export interface RunSettings {
  readonly months: readonly number[] | undefined;
  readonly modulesPerUnit: number | undefined;
  readonly stormLed: boolean | undefined;
  readonly carriedOutBy: 'person' | 'switch' | undefined;
  readonly draws: number;
  readonly seed: string;
}

/** What of it is shown; changing it runs nothing. */
export interface ViewSettings {
  readonly alternativeId: string;
  readonly strategyIds: readonly string[];
}

export interface PageSettings {
  readonly run: RunSettings;
  readonly view: ViewSettings;
}

export const MOST_DRAWS = 20_000;
export const MOST_MODULES = 16;
/** Strategies shown at first: more curves than this are hard to tell apart. */
const SHOWN_AT_FIRST = 5;

/** The ids and titles a page can choose from. */
export interface Choices {
  readonly alternatives: readonly { readonly id: string; readonly title: string }[];
  readonly strategies: readonly { readonly id: string; readonly title: string }[];
}

/** Every household of a scenario has the same strategies. */
export function choicesOf({ alternatives }: Scenario): Choices {
  return { alternatives, strategies: alternatives[0]!.household.strategies };
}

/** The page as it was published. */
export function ownSettings(study: EmbeddedStudy, choices: Choices): PageSettings {
  return {
    run: {
      months: undefined,
      modulesPerUnit: undefined,
      stormLed: undefined,
      carriedOutBy: undefined,
      draws: study.draws,
      seed: study.seed,
    },
    view: {
      alternativeId: choices.alternatives[0]!.id,
      strategyIds: choices.strategies.slice(0, SHOWN_AT_FIRST).map((s) => s.id),
    },
  };
}

type Said = string | number | boolean | readonly (string | number)[] | undefined;

/** The words of a link that carry them. */
export const SETTING_WORDS = ['household', 'strategies', 'months', 'modules', 'storm', 'by', 'draws', 'seed'];

/** Every setting as a link writes it; as in the household's own file: left out. */
export function settingsSaid({ run, view }: PageSettings): URLSearchParams {
  const said = new URLSearchParams();
  const say = (word: string, value: Said) => {
    if (value !== undefined) said.set(word, String(value));
  };
  say('household', view.alternativeId);
  say('strategies', view.strategyIds);
  say('months', run.months);
  say('modules', run.modulesPerUnit);
  say('storm', run.stormLed);
  say('by', run.carriedOutBy);
  say('draws', run.draws);
  say('seed', run.seed);
  return said;
}

/** The part of a link after "#": only what differs from the page's own settings. */
export function settingsHash(settings: PageSettings, own: PageSettings): string {
  const usual = settingsSaid(own);
  const said = settingsSaid(settings);
  for (const [word, text] of [...said]) if (usual.get(word) === text) said.delete(word);
  return linkText(said);
}

/** Settings from a link, and a sentence for each part of it that this page cannot follow. */
export function settingsFromHash(
  hash: string,
  own: PageSettings,
  choices: Choices,
): { settings: PageSettings; complaints: readonly string[] } {
  const complaints: string[] = [];
  const read = wordReader(saidIn(hash), complaints);
  const known = (list: readonly { id: string }[]) => (id: string) =>
    list.some((item) => item.id === id) ? id : undefined;
  const listed = (list: readonly { id: string }[]) => list.map((item) => item.id).join(', ');
  const settings: PageSettings = {
    run: {
      months: read('months', own.run.months, monthsFrom, 'months as numbers from 1 to 12, such as 12,1,2'),
      modulesPerUnit: read(
        'modules',
        own.run.modulesPerUnit,
        wholeFrom(1, MOST_MODULES),
        `a whole number from 1 to ${MOST_MODULES}`,
      ),
      stormLed: read('storm', own.run.stormLed, yesOrNo, 'true or false'),
      carriedOutBy: read('by', own.run.carriedOutBy, personOrSwitch, 'person or switch'),
      draws: read('draws', own.run.draws, wholeFrom(1, MOST_DRAWS), `a whole number from 1 to ${MOST_DRAWS}`),
      seed: read('seed', own.run.seed, (text) => text.slice(0, 80) || undefined, 'a word or number'),
    },
    view: {
      alternativeId: read(
        'household',
        own.view.alternativeId,
        known(choices.alternatives),
        `one of ${listed(choices.alternatives)}`,
      ),
      strategyIds: read(
        'strategies',
        own.view.strategyIds,
        listFrom(known(choices.strategies), 'may be empty'),
        `some of ${listed(choices.strategies)}`,
      ),
    },
  };
  return { settings, complaints };
}

/** Reads a whole number within these; undefined when it is none. */
export function wholeFrom(least: number, most: number) {
  return (text: string) => (/^\d{1,9}$/.test(text) && +text >= least && +text <= most ? +text : undefined);
}

const month = wholeFrom(1, 12);
const monthsFrom = listFrom(month);
const yesOrNo = (text: string) => (text === 'true' ? true : text === 'false' ? false : undefined);
const personOrSwitch = (text: string) => (text === 'person' || text === 'switch' ? text : undefined);

function listFrom<T>(parse: (text: string) => T | undefined, none?: 'may be empty') {
  return (text: string): T[] | undefined => {
    if (text === '' && none) return [];
    const items = text.split(',').map(parse);
    return items.every((item) => item !== undefined) ? items : undefined;
  };
}
