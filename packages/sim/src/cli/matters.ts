/** `rideout matters`: which of the things nobody knows move the days. */
import { runsToDo, whatMatters } from '../advice/matters/what-matters.ts';
import { scenarioFor, tellAnswer } from './advice-verb.ts';
import { withDraws } from './asking.ts';
import { chosenRun, type RunOptionTexts } from './chosen-run.ts';
import { renderMatters } from './render-matters.ts';
import type { StudyVerbOptions } from './study-options.ts';

export type MattersOptions = StudyVerbOptions & RunOptionTexts;

export async function matters(path: string, options: MattersOptions): Promise<number> {
  const { seed, draws } = options;
  const scenario = scenarioFor(path, options);
  const choice = chosenRun(scenario, options);
  const answer = await withDraws(options, runsToDo(scenario, { ...choice, draws }), (ask, onProgress) =>
    whatMatters(scenario, { ...choice, seed, draws, onProgress }, ask),
  );
  return tellAnswer(answer, scenario, options, {
    name: 'matters',
    render: renderMatters,
    tables: async (told) => {
      const { mattersTable } = await import('../advice/matters/matters-table.ts');
      return { matters: mattersTable(told) };
    },
  });
}
