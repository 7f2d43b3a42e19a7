/** The comparison in each season: the same two households and the one strategy, begun in other months. */
import type { Scenario, StudySummary } from '@rideout/sim';
import type { ToldProvenance } from '../charts/changes-sentence.ts';
import { pairShown } from './alternatives-page.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords } from './changed-words.ts';
import { liveRuns, type LiveRuns, type PlannedRun } from './live-runs.ts';
import type { LiveStudy } from './live-study.ts';
import { monthsText } from './months-text.ts';
import { narrowedScenario } from './narrowed-scenario.ts';
import type { OpenPage } from './open-page.ts';
import type { RunSettings, ViewSettings } from './page-settings.ts';
import { SEASONS } from './settings-forms.ts';

/** Four studies, each of three months. */
export function seasonPlan(scenario: Scenario, run: RunSettings, view: ViewSettings): PlannedRun[] {
  const { alternativeId, strategyId } = pairShown(view);
  const pair = narrowedScenario(scenario, [scenario.alternatives[0]!.id, alternativeId], strategyId);
  return SEASONS.map((season) => season.split(',').map(Number)).map((months) => ({
    title: monthsText(months),
    scenario: changedScenario(pair, { ...run, months }),
  }));
}

/** Where the seasons' figures are from: what was changed of the file, but for the months, which are each season's own. */
export function seasonsFrom({ study, runForm }: OpenPage, { provenance }: StudySummary): ToldProvenance {
  return { ...provenance, changes: changedWords(study.scenario, { ...runForm.value, months: undefined }) };
}

/** Follows the page's own study, so that the first answer comes first. */
export function liveSeasons({ study, runForm, viewForm }: OpenPage, own: LiveStudy): LiveRuns {
  return liveRuns({
    plan: () => seasonPlan(study.scenario, runForm.value, viewForm.value),
    settings: () => runForm.value,
    forms: [viewForm],
    what: 'the four seasons',
    after: { study: own, form: runForm },
  });
}
