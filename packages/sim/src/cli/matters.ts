/** `rideout matters`: which of the things nobody knows move the days. */
import { runsToDo, whatMatters } from '../advice/matters/what-matters.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { exitOf, withDraws } from './asking.ts';
import { chosenRun, type RunOptionTexts } from './chosen-run.ts';
import { remark, say, terminalLook } from './output.ts';
import { renderMatters } from './render-matters.ts';
import { sayCautions } from './say-cautions.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeResult } from './write-result.ts';

export type MattersOptions = StudyVerbOptions & RunOptionTexts;

export async function matters(path: string, options: MattersOptions): Promise<number> {
  const { seed, draws } = options;
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  const choice = chosenRun(scenario, options);
  const answer = await withDraws(options, runsToDo(scenario, { ...choice, draws }), (ask, onProgress) =>
    whatMatters(scenario, { ...choice, seed, draws, onProgress }, ask),
  );
  if (answer === undefined) return exitOf(answer);
  say(options.json === true ? JSON.stringify(answer) : renderMatters(answer, terminalLook(options)));
  if (options.json !== true) sayCautions(scenario, options);
  await writeResult(options, answer, 'matters', async () => {
    const { mattersTable } = await import('../advice/matters/matters-table.ts');
    return { matters: mattersTable(answer) };
  });
  return exitOf(answer);
}
