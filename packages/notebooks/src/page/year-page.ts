/** What the page "Through the year" starts from. */
import * as Inputs from '@observablehq/inputs';
import { scenarioHash, type Provenance } from '@rideout/sim';
import { html } from '../elements.ts';
import type { ToldProvenance } from '../charts/changes-sentence.ts';
import type { YearHeatMapOptions } from '../charts/year-heat-map.ts';
import type { YearMonth } from '../charts/year-cells.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords } from './changed-words.ts';
import { embeddedStudy, type EmbeddedStudy } from './embedded-study.ts';
import { liveRuns, type DoneRun, type LiveRuns } from './live-runs.ts';
import { monthsText } from './months-text.ts';
import { oneStrategyForm, usualStrategy } from './one-strategy-form.ts';
import { openPage, type OpenPage } from './open-page.ts';
import { wordReader, type LinkPart } from './page-link.ts';
import type { PageSettings } from './page-settings.ts';
import { runForm, translated, group, type SettingsForm } from './settings-forms.ts';
import { ACROSS, acrossTitle, hasSolar, yearColumns, type Across } from './year-columns.ts';
import { chosenScenario, YEAR, yearPlan } from './year-plan.ts';

export interface YearPage extends OpenPage {
  readonly acrossForm: SettingsForm<Across>;
}

/** Twelve months times several columns: fewer draws than a single study starts with. */
const DRAWS_AT_FIRST = 100;

export function openYear(): YearPage {
  const study = embeddedStudy();
  const across = acrossForm(study);
  const page = openPage({
    study,
    own: usualYear,
    runForm: (scenario, asked) => runForm(scenario, asked, ['months', 'modulesPerUnit']),
    viewForm: (choices, start) =>
      oneStrategyForm(choices, start, {
        legend: 'Household',
        household: 'One of the households in the file',
      }),
    parts: [across.part],
  });
  return { ...page, acrossForm: across.form };
}

function usualYear(usual: PageSettings, { scenario }: OpenPage['study']): PageSettings {
  const [first] = scenario.alternatives;
  return {
    run: { ...usual.run, draws: Math.min(usual.run.draws, DRAWS_AT_FIRST) },
    view: { alternativeId: first!.id, strategyIds: [usualStrategy(first!.household.strategies)] },
  };
}

const LABELS: Readonly<Record<Across, string>> = {
  modules: 'more battery modules',
  solar: 'more or fewer solar panels',
};

/** A household without panels has nothing to choose. */
function acrossForm({ scenario }: EmbeddedStudy): { form: SettingsForm<Across>; part: LinkPart } {
  const offered = scenario.alternatives.some((a) => hasSolar(a.household)) ? ACROSS : ACROSS.slice(0, 1);
  const usual = offered[0]!;
  const inputs = Inputs.form(
    {
      across: Inputs.select(offered, {
        label: 'What is changed, month by month',
        format: (across) => LABELS[across],
        value: usual,
      }),
    },
    { template: (i) => html`<div class="controls screen-only">${group('Laid out by', i.across)}</div>` },
  );
  const form = translated(
    inputs,
    ({ across }): Across => across,
    (across) => ({ across }),
  );
  const part: LinkPart = {
    words: ['across'],
    forms: [form],
    say: () => new URLSearchParams(form.value === usual ? {} : { across: form.value }),
    take: (said) => {
      const complaints: string[] = [];
      const known = (text: string) => offered.find((across) => across === text);
      form.value = wordReader(said, complaints)('across', usual, known, `one of ${offered.join(', ')}`);
      return { complaints };
    },
  };
  return { form, part };
}

export function liveYear(page: YearPage): LiveRuns {
  const { study, runForm: run, viewForm: view, acrossForm: across } = page;
  return liveRuns({
    plan: () => yearPlan(study.scenario, run.value, view.value, across.value),
    settings: () => run.value,
    forms: [run, view, across],
    what: 'twelve months',
    changes: () => changedWords(study.scenario, run.value),
  });
}

/** What is on the page: months done so far, and everything that the chart says of them. */
export interface Year {
  readonly months: readonly YearMonth[];
  readonly options: Omit<YearHeatMapOptions, 'width'>;
}

/** Of what the controls said when `done` was worked out: its columns and draws are its own. */
export function yearShown({ study, runForm: run, viewForm: view }: YearPage, done: readonly DoneRun[]): Year {
  const chosen = chosenScenario(study.scenario, view.value);
  const household = chosen.alternatives[0]!.household;
  const { horizonDays, provenance, strategies } = done[0]!.summary;
  const across = ACROSS.find((a) =>
    yearColumns(household, a).some((c) => c.id === strategies[0]!.alternativeId),
  )!;
  return {
    months: YEAR.map((month) => monthsText([month])).map((title) => ({
      title,
      summary: done.find((d) => d.title === title)?.summary,
    })),
    options: {
      columns: yearColumns(household, across),
      across: acrossTitle(across),
      strategyTitle: strategies[0]!.strategyTitle,
      horizonDays,
      provenance: ofWholeScenario(provenance, { study, run: run.value }),
    },
  };
}

/** The hash of the file with the reader's settings; months and columns are said beside it. */
function ofWholeScenario(
  provenance: Provenance,
  { study, run }: { readonly study: OpenPage['study']; readonly run: PageSettings['run'] },
): ToldProvenance {
  return {
    ...provenance,
    changes: changedWords(study.scenario, run),
    scenarioHash: scenarioHash(changedScenario(study.scenario, run)),
    draws: run.draws,
  };
}
