/** `rideout legs`: which circuit on which leg. */
import { findLegs } from '../advice/legs/find-legs.ts';
import { scenarioFor, tellAnswer } from './advice-verb.ts';
import { withStudies } from './asking.ts';
import { chosenRun, type RunOptionTexts } from './chosen-run.ts';
import { renderLegs } from './render-legs.ts';
import { OptionError } from './report-error.ts';
import type { StudyVerbOptions } from './study-options.ts';

export interface LegsOptions extends StudyVerbOptions, RunOptionTexts {
  readonly choose: number;
}

export async function legs(path: string, options: LegsOptions): Promise<number> {
  const scenario = scenarioFor(path, options);
  const { alternative, strategy } = chosenRun(scenario, options);
  const question = {
    seed: options.seed,
    draws: options.draws,
    choosingDraws: options.choose,
    alternative,
    strategy: options.strategy === undefined ? undefined : strategy,
  };
  const answer = await withStudies(options, (ask) => findLegs(scenario, question, ask)).catch(inWords(path));
  return tellAnswer(answer, scenario, options, {
    name: 'legs',
    render: renderLegs,
    tables: async (told) => {
      const { legsTable } = await import('../advice/legs/legs-table.ts');
      return { legs: legsTable(told) };
    },
  });
}

/** A household without a choice is no fault of ours. */
function inWords(path: string): (error: unknown) => never {
  return (error) => {
    throw error instanceof RangeError ? new OptionError(`${path}: ${error.message}.`) : error;
  };
}
