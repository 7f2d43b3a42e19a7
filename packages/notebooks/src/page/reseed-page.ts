/** What the page "Re-seed" starts from: one strategy in one household, and how surely its days are known. */
import * as Inputs from '@observablehq/inputs';
import { whatMatters, type Matters } from '@rideout/sim';
import { drawCrew } from '../draw-client.ts';
import { html } from '../elements.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords, withChanges } from './changed-words.ts';
import { embeddedStudy } from './embedded-study.ts';
import { liveRuns, type LiveRuns } from './live-runs.ts';
import type { LiveStudy } from './live-study.ts';
import { liveWork, type LiveWork } from './live-work.ts';
import { narrowedScenario } from './narrowed-scenario.ts';
import { oneStrategyForm, usualStrategy } from './one-strategy-form.ts';
import { openPage, type OpenPage } from './open-page.ts';
import { wordReader, type LinkPart } from './page-link.ts';
import { wholeFrom, type ViewSettings } from './page-settings.ts';
import { group, runForm, translated, type SettingsForm } from './settings-forms.ts';
import { wholeNumber } from './whole-number.ts';

/** How often the question is asked. */
export interface Repeats {
  /** How many seeds, the page's own among them. */
  readonly seeds: number;
  /** Base rows of the sensitivity measures. */
  readonly rows: number;
}

export interface ReseedPage extends OpenPage {
  readonly repeatsForm: SettingsForm<Repeats>;
}

/** As many outages as the command line draws unless told otherwise. */
const DRAWS_AT_FIRST = 200;
const USUAL: Repeats = { seeds: 8, rows: 200 };
const MOST: Repeats = { seeds: 40, rows: 5000 };
const LEAST: Repeats = { seeds: 2, rows: 20 };

/** Every outcome is shown and saved: it is simulated here, whatever figures the page was published with. */
export function openReseed(): ReseedPage {
  const { scenario, seed, draws } = embeddedStudy();
  const study = { scenario, seed, draws: Math.min(draws, DRAWS_AT_FIRST) };
  const repeatsForm = repeatsControls();
  const page = openPage({
    study,
    own: (usual) => ({
      ...usual,
      view: {
        ...usual.view,
        strategyIds: [usualStrategy(scenario.alternatives[0]!.household.strategies)],
      },
    }),
    // what the command line can be told: the call that is written out must repeat the page
    runForm: (scenario, asked) => runForm(scenario, asked, ['modulesPerUnit', 'stormLed', 'carriedOutBy']),
    viewForm: (choices, start) =>
      oneStrategyForm(choices, start, {
        legend: 'Household',
        household: 'One of the households in the file',
      }),
    shows: { clock: true, temperature: false },
    parts: [repeatsPart(repeatsForm)],
  });
  return { ...page, repeatsForm };
}

function repeatsControls(): SettingsForm<Repeats> {
  const number = (name: keyof Repeats, label: string) =>
    wholeNumber([LEAST[name], MOST[name]], { label, value: USUAL[name] });
  const form = Inputs.form(
    {
      seeds: number('seeds', 'Seeds'),
      rows: number('rows', 'Base rows of the sensitivity (each about thirty runs)'),
    },
    {
      template: ({ seeds, rows }) =>
        html`<div class="controls screen-only">${group('How often', seeds, rows)}</div>`,
    },
  );
  return translated(
    form,
    ({ seeds, rows }) => ({ seeds: Math.floor(seeds), rows: Math.floor(rows) }),
    (repeats) => ({ ...repeats }),
  );
}

function repeatsPart(form: SettingsForm<Repeats>): LinkPart {
  const words = ['seeds', 'rows'] as const;
  return {
    words,
    forms: [form],
    say: () =>
      new URLSearchParams(
        words.filter((w) => form.value[w] !== USUAL[w]).map((w) => [w, String(form.value[w])]),
      ),
    take: (said) => {
      const complaints: string[] = [];
      const read = wordReader(said, complaints);
      const number = (word: keyof Repeats) =>
        read(
          word,
          USUAL[word],
          wholeFrom(LEAST[word], MOST[word]),
          `a whole number from ${LEAST[word]} to ${MOST[word]}`,
        );
      form.value = { seeds: number('seeds'), rows: number('rows') };
      return { complaints };
    },
  };
}

/** The page's own seed, then the same word with a number. */
export function seedNames(seed: string, count: number): string[] {
  return Array.from({ length: count }, (_, i) => (i === 0 ? seed : `${seed}-${i + 1}`));
}

/** Where the strategy and the household stand in the scenario. */
export function positions({ choices }: OpenPage, { alternativeId, strategyIds }: ViewSettings) {
  return {
    alternative: choices.alternatives.findIndex((a) => a.id === alternativeId),
    strategy: choices.strategies.findIndex((s) => s.id === strategyIds[0]),
  };
}

/** Follows the page's own study. Each seed is asked of the one strategy and household alone: the same draws, sooner. */
export function liveSeeds(page: ReseedPage, own: LiveStudy): LiveRuns {
  const { study, runForm: run, viewForm: view, repeatsForm } = page;
  return liveRuns({
    plan: () => {
      const { alternativeId, strategyIds } = view.value;
      const one = narrowedScenario(study.scenario, [alternativeId], strategyIds[0]!);
      const scenario = changedScenario(one, run.value);
      return seedNames(run.value.seed, repeatsForm.value.seeds).map((seed) => ({
        title: seed,
        scenario,
        seed,
      }));
    },
    settings: () => run.value,
    forms: [view, repeatsForm],
    what: 'the other seeds',
    after: { study: own, form: run },
  });
}

/** Follows the seeds. */
export function liveMatters(page: ReseedPage, seeds: LiveRuns): LiveWork<Matters> {
  const { study, runForm: run, viewForm: view, repeatsForm } = page;
  const work = async (tell: (done: number, of: number) => void, stopped: AbortSignal) => {
    const crew = drawCrew();
    stopped.addEventListener('abort', crew.dismiss, { once: true });
    const question = {
      ...positions(page, view.value),
      seed: run.value.seed,
      draws: repeatsForm.value.rows,
      onProgress: tell,
    };
    try {
      const changes = changedWords(study.scenario, run.value);
      const answer = await whatMatters(changedScenario(study.scenario, run.value), question, crew.ask);
      return withChanges(answer, changes);
    } finally {
      crew.dismiss();
    }
  };
  const done = () => {
    const asked = seedNames(run.value.seed, repeatsForm.value.seeds);
    const there = (seeds.value ?? []).filter(
      ({ title, summary }, i) =>
        title === asked[i] &&
        summary.provenance.draws === run.value.draws &&
        summary.strategies[0]!.strategyId === view.value.strategyIds[0] &&
        summary.strategies[0]!.alternativeId === view.value.alternativeId,
    );
    return there.length === asked.length;
  };
  return liveWork({
    work,
    what: 'What matters',
    counted: 'runs',
    forms: [run, view, repeatsForm],
    after: { source: seeds, done },
  });
}
