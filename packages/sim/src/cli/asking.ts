/** Studies for advice, on this machine's cores, with a bar for each and an ear for Ctrl-C. */
import type { AskStudy } from '../advice/ask-study.ts';
import type { AskDraws } from '../advice/draw-job.ts';
import { askDrawsPool } from '../node/ask-draws-pool.ts';
import { askPool, StudyInterrupted } from '../node/ask-pool.ts';
import { assertCanWrite } from '../node/can-write.ts';
import { openPool, type Pool } from '../node/shard-pool.ts';
import { remark } from './output.ts';
import { startProgress } from './progress.ts';
import type { StudyVerbOptions } from './study-options.ts';

/** How it is asked; `out` is tried before the work begins. */
type Asked = Pick<StudyVerbOptions, 'quiet' | 'json' | 'ascii' | 'workers' | 'out'>;

/**
 * Runs `answer` with a way to ask for studies. Interrupted: says so and returns nothing, for advice on half the studies
 * would mislead.
 */
export async function withStudies<Answer>(
  options: Asked,
  answer: (ask: AskStudy) => Promise<Answer>,
): Promise<Answer | undefined> {
  return unlessInterrupted(options, (signal, pool) =>
    answer(async (scenario, question) => {
      const progress = startProgress(question.draws, options);
      const ask = askPool({
        workers: options.workers,
        pool,
        signal,
        onProgress: progress.update,
        onTrouble: (message) => remark(message, options),
      });
      return ask(scenario, question).finally(progress.stop);
    }),
  );
}

/** The same for work on draws that is no study, `runs` of it in all, with one bar. */
export async function withDraws<Answer>(
  options: Asked,
  runs: number,
  answer: (ask: AskDraws, onProgress: (done: number) => void) => Promise<Answer>,
): Promise<Answer | undefined> {
  const progress = startProgress(runs, options);
  return unlessInterrupted(options, (signal, pool) => {
    const onTrouble = (message: string) => remark(message, options);
    const ask = askDrawsPool({ workers: options.workers, pool, signal, onTrouble });
    return answer(ask, progress.update);
  }).finally(progress.stop);
}

/**
 * With threads that serve all that is asked for on the way: a new one takes half a second to come up to speed. Ctrl-C
 * ends them in the middle of what they do, for nothing of it is reported.
 */
async function unlessInterrupted<Answer>(
  options: Asked,
  answer: (signal: AbortSignal, pool: Pool | undefined) => Promise<Answer>,
): Promise<Answer | undefined> {
  if (options.out !== undefined) await assertCanWrite(options.out);
  const interruption = new AbortController();
  let onInterrupt = () => {};
  const interrupted = new Promise<never>((_, reject) => {
    onInterrupt = () => {
      interruption.abort();
      reject(new StudyInterrupted('Interrupted.'));
    };
  });
  process.once('SIGINT', onInterrupt);
  const pool = options.workers === 0 ? undefined : openPool(options.workers);
  try {
    return await Promise.race([answer(interruption.signal, pool), interrupted]);
  } catch (error) {
    if (!(error instanceof StudyInterrupted)) throw error;
    remark('\nInterrupted before the answer was ready: nothing to report.', options);
    return undefined;
  } finally {
    process.removeListener('SIGINT', onInterrupt);
    await pool?.close();
  }
}
