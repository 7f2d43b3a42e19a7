/** How the estimate has moved so far: from every outcome once they are there, before that from each summary told. */
import { runningEstimate, type RunningEstimate, type StudySummary } from '@rideout/sim';
import type { LiveStudy } from './live-study.ts';
import type { OpenPage } from './open-page.ts';
import type { ViewSettings } from './page-settings.ts';
import { positions } from './reseed-page.ts';
import { shownCell } from './reseed-shown.ts';

export type EstimatesSoFar = (summary: StudySummary, shown: ViewSettings) => RunningEstimate[];

export function watchEstimates(page: OpenPage, own: LiveStudy): EstimatesSoFar {
  let told: StudySummary[] = [];
  return (summary, shown) => {
    if (!told.includes(summary)) told = goesOn(told.at(-1), summary) ? [...told, summary] : [summary];
    if (own.rows) return runningEstimate(own.rows, positions(page, shown));
    return told.flatMap((s) => lookOf(s, shown));
  };
}

/** More outages of the very same study. */
function goesOn(before: StudySummary | undefined, { provenance: now }: StudySummary): boolean {
  const then = before?.provenance;
  return then?.scenarioHash === now.scenarioHash && then.seed === now.seed && then.draws < now.draws;
}

function lookOf(summary: StudySummary, view: ViewSettings): RunningEstimate[] {
  const cell = shownCell(summary, view);
  if (cell === undefined) return [];
  const { draws, nineInTenDays, medianDays } = cell;
  return [{ draws, nineInTenDays, medianDays }];
}
