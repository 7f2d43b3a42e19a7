/** Studies that advice asks for, run on this machine's cores. */
import type { AskStudy } from '../advice/ask-study.ts';
import { runStudy, type RunOptions } from './run-study.ts';

/** An interrupted study is not answered: advice on half of it would mislead. */
export class StudyInterrupted extends Error {
  override readonly name = 'StudyInterrupted';
}

/**
 * A way for advice to ask for studies, run on the cores of this machine.
 *
 * @param options as for `runStudy`; progress counts the draws of the study being run; without a `pool` each has its own
 */
export function askPool(
  options: Pick<RunOptions, 'workers' | 'pool' | 'onProgress' | 'onTrouble' | 'signal'>,
): AskStudy {
  return async (scenario, question) => {
    const run = await runStudy(scenario, { ...options, ...question });
    if (run.ended === 'interrupted') throw new StudyInterrupted('The study was interrupted.');
    return { outline: run.study, rows: run.rows };
  };
}
