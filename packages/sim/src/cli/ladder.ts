/** `rideout ladder`: what to buy next, and after that. */
import { findLadder } from '../advice/ladder/find-ladder.ts';
import { scenarioFor, tellAnswer } from './advice-verb.ts';
import { withStudies } from './asking.ts';
import { renderLadder } from './render-ladder.ts';
import { OptionError } from './report-error.ts';
import type { StudyVerbOptions } from './study-options.ts';

export interface LadderOptions extends StudyVerbOptions {
  readonly choose: number;
  readonly budget?: number;
  readonly confidence?: number;
}

export async function ladder(path: string, options: LadderOptions): Promise<number> {
  const scenario = scenarioFor(path, options);
  if (scenario.ladder === undefined)
    throw new OptionError(
      `${path}: found no ladder; expected a block ladder: with a start and steps. data/full-house.yaml has one to start from.`,
    );
  const { seed, draws, choose: choosingDraws, budget, confidence } = options;
  const answer = await withStudies(options, (ask) =>
    findLadder(scenario, { seed, draws, choosingDraws, budget, confidence }, ask),
  );
  return tellAnswer(answer, scenario, options, {
    name: 'ladder',
    render: renderLadder,
    tables: async (told) => {
      const { ladderTable } = await import('../advice/ladder/ladder-table.ts');
      return { ladder: ladderTable(told) };
    },
  });
}
