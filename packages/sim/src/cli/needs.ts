/** `rideout needs`: how long each need is met, and how badly it is missed. */
import { askNeeds } from '../advice/needs/ask-needs.ts';
import { scenarioNeeds } from '../advice/needs/needs-job.ts';
import { scenarioFor, tellAnswer } from './advice-verb.ts';
import { withDraws } from './asking.ts';
import { renderNeeds } from './render-needs.ts';
import { OptionError } from './report-error.ts';
import type { StudyVerbOptions } from './study-options.ts';

export type NeedsOptions = StudyVerbOptions;

export async function needs(path: string, options: NeedsOptions): Promise<number> {
  const { seed, draws } = options;
  const scenario = scenarioFor(path, options);
  if (scenarioNeeds(scenario).length === 0)
    throw new OptionError(
      `${path}: found no needs; expected a list under needs, or a need on some circuit, such as need: food`,
    );
  const answer = await withDraws(options, draws, (ask, onProgress) =>
    askNeeds(scenario, { seed, draws, onProgress }, ask),
  );
  return tellAnswer(answer, scenario, options, {
    name: 'needs',
    render: renderNeeds,
    tables: async (told) => {
      const { needsEnduranceTable } = await import('../advice/needs/needs-table.ts');
      return { needs: needsEnduranceTable(told) };
    },
  });
}
