/** The comparison in each season: the same two households and the one strategy, begun in other months. */
import type { Scenario } from '@rideout/sim';
import { pairShown } from './alternatives-page.ts';
import { changedScenario } from './changed-scenario.ts';
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
