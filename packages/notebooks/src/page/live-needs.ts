/** The line that works out each need as a family would notice it, once the page's own study has settled. */
import { askNeeds, scenarioNeeds, type NeedsAnswer } from '@rideout/sim';
import { drawCrew } from '../draw-client.ts';
import { changedScenario } from './changed-scenario.ts';
import { changedWords, withChanges } from './changed-words.ts';
import type { LiveStudy } from './live-study.ts';
import { liveWork, type LiveWork } from './live-work.ts';
import type { OpenPage } from './open-page.ts';

/** Undefined where no circuit says what it serves. */
export function liveNeeds(
  { study, runForm: run }: OpenPage,
  own: LiveStudy,
): LiveWork<NeedsAnswer> | undefined {
  if (scenarioNeeds(study.scenario).length === 0) return undefined;
  const work = async (tell: (done: number, of: number) => void, stopped: AbortSignal) => {
    const crew = drawCrew();
    stopped.addEventListener('abort', crew.dismiss, { once: true });
    const { seed, draws } = run.value;
    try {
      const scenario = changedScenario(study.scenario, run.value);
      const changes = changedWords(study.scenario, run.value);
      const answer = await askNeeds(scenario, { seed, draws, onProgress: tell }, crew.ask);
      return withChanges(answer, changes);
    } finally {
      crew.dismiss();
    }
  };
  const done = () => {
    const now = own.value?.provenance;
    return now?.draws === run.value.draws && now.seed === run.value.seed;
  };
  return liveWork({
    work,
    what: 'The needs as a family would notice them',
    counted: 'outages',
    forms: [run],
    after: { source: own, done },
  });
}
