/** Jobs on draws that advice gives out, run on this machine's cores. */
import { askDrawsHere, type AskDraws, type DrawJob } from '../advice/draw-job.ts';
import { assertWholeNumber } from '../trials/assert-number.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { RowsInOrder } from '../trials/rows-in-order.ts';
import { StudyInterrupted } from './ask-pool.ts';
import type { RunOptions } from './run-study.ts';
import { openPool, type Pool, type Shard } from './shard-pool.ts';

/** Draws in a shard: each may be a dozen runs. */
const MOST_AT_ONCE = 10;

type Options = Pick<RunOptions, 'workers' | 'pool' | 'onTrouble' | 'signal'>;

/**
 * Rows are the same bits for any number of workers. Without a `pool` each job has its own.
 * @throws StudyInterrupted: half an answer would mislead
 * @throws RangeError for `workers` or draws that are no whole number, before anything is begun
 */
export function askDrawsPool(options: Options): AskDraws {
  const { workers, signal } = options;
  assertWholeNumber(workers, 'workers', 0);
  const unlessInterrupted = () => {
    if (signal?.aborted === true) throw new StudyInterrupted('The runs were interrupted.');
  };
  return async (job, draws, onDone) => {
    assertWholeNumber(draws, 'draws', 1);
    const told = (done: number) => {
      unlessInterrupted();
      onDone?.(done);
    };
    const rows =
      workers === 0 ? await askDrawsHere(job, draws, told) : await onThreads(options, job, draws, onDone);
    unlessInterrupted();
    return rows;
  };
}

async function onThreads(
  { workers, pool: given, signal, onTrouble }: Options,
  job: DrawJob,
  draws: number,
  onDone?: (done: number) => void,
): Promise<OutcomeRows> {
  const size = Math.max(1, Math.min(MOST_AT_ONCE, Math.ceil(draws / (workers * 8))));
  const pool: Pool = given ?? openPool(Math.min(workers, Math.ceil(draws / size)));
  const collected = new RowsInOrder();
  let handedOut = 0;
  let done = 0;
  pool.tell(job);
  try {
    await pool.run({
      next: (): Shard | undefined => {
        if (handedOut >= draws || signal?.aborted === true) return undefined;
        const shard = { from: handedOut, to: Math.min(draws, handedOut + size) };
        handedOut = shard.to;
        return shard;
      },
      onRows: (shard, rows) => {
        collected.add(shard.from, shard.to, rows);
        done += shard.to - shard.from;
        onDone?.(done);
      },
      onTrouble,
    });
  } finally {
    if (given === undefined) await pool.close();
  }
  return collected.joined();
}
