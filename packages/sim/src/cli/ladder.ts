/** `rideout ladder`: what to buy next, and after that. */
import { findLadder } from '../advice/ladder/find-ladder.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { exitOf, withStudies } from './asking.ts';
import { remark, say, terminalLook } from './output.ts';
import { renderLadder } from './render-ladder.ts';
import { OptionError } from './report-error.ts';
import { sayCautions } from './say-cautions.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeResult } from './write-result.ts';

export interface LadderOptions extends StudyVerbOptions {
  readonly choose: number;
  readonly budget?: number;
  readonly confidence?: number;
}

export async function ladder(path: string, options: LadderOptions): Promise<number> {
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  if (scenario.ladder === undefined)
    throw new OptionError(
      `${path}: found no ladder; expected a block ladder: with a start and steps. data/full-house.yaml has one to start from.`,
    );
  const { seed, draws, choose: choosingDraws, budget, confidence } = options;
  const answer = await withStudies(options, (ask) =>
    findLadder(scenario, { seed, draws, choosingDraws, budget, confidence }, ask),
  );
  if (answer === undefined) return exitOf(answer);
  say(options.json === true ? JSON.stringify(answer) : renderLadder(answer, terminalLook(options)));
  if (options.json !== true) sayCautions(scenario, options);
  await writeResult(options, answer, 'ladder', async () => {
    const { ladderTable } = await import('../advice/ladder/ladder-table.ts');
    return { ladder: ladderTable(answer) };
  });
  return exitOf(answer);
}
