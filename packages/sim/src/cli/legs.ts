/** `rideout legs`: which circuit on which leg. */
import { findLegs } from '../advice/legs/find-legs.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { exitOf, withStudies } from './asking.ts';
import { chosenRun, type RunOptionTexts } from './chosen-run.ts';
import { remark, say, terminalLook } from './output.ts';
import { renderLegs } from './render-legs.ts';
import { OptionError } from './report-error.ts';
import { sayCautions } from './say-cautions.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeResult } from './write-result.ts';

export interface LegsOptions extends StudyVerbOptions, RunOptionTexts {
  readonly choose: number;
}

export async function legs(path: string, options: LegsOptions): Promise<number> {
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  const { alternative, strategy } = chosenRun(scenario, options);
  const question = {
    seed: options.seed,
    draws: options.draws,
    choosingDraws: options.choose,
    alternative,
    strategy: options.strategy === undefined ? undefined : strategy,
  };
  const answer = await withStudies(options, (ask) => findLegs(scenario, question, ask)).catch(inWords(path));
  if (answer === undefined) return exitOf(answer);
  say(options.json === true ? JSON.stringify(answer) : renderLegs(answer, terminalLook(options)));
  if (options.json !== true) sayCautions(scenario, options);
  await writeResult(options, answer, 'legs', async () => {
    const { legsTable } = await import('../advice/legs/legs-table.ts');
    return { legs: legsTable(answer) };
  });
  return exitOf(answer);
}

/** A household without a choice is no fault of ours. */
function inWords(path: string): (error: unknown) => never {
  return (error) => {
    throw error instanceof RangeError ? new OptionError(`${path}: ${error.message}.`) : error;
  };
}
