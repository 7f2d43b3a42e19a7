/** Shards across worker threads: handed out one at a time, first come, first served. */
import type { Worker } from 'node:worker_threads';
import type { DrawJob } from '../advice/draw-job.ts';
import { assertWholeNumber } from '../trials/assert-number.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { startWorker } from './start-worker.ts';

/** Draws `from` to `to - 1`. */
export interface Shard {
  readonly from: number;
  readonly to: number;
}

/** What a pool hands out, and what it gives back. */
export interface Handout {
  /** The next shard to run, or undefined when there is none; asked again whenever a thread is free. */
  readonly next: () => Shard | undefined;
  readonly onRows: (shard: Shard, rows: OutcomeRows) => void;
  /** Told when a thread breaks down; its shard is run once more on a new thread. */
  readonly onTrouble?: ((message: string) => void) | undefined;
}

/** Threads that are kept from one handout to the next, and from one job to the next. */
export interface Pool {
  /** The job that is handed out from now on; not while one is. */
  readonly tell: (job: DrawJob) => void;
  /**
   * Resolves when `next` has no more and every shard handed out is done. Rejects when a shard breaks two threads; the
   * others then finish what they have begun and are handed nothing more. Not again before it has ended.
   */
  readonly run: (handout: Handout) => Promise<void>;
  /** Ends the threads, whatever they are doing; what was handed out is then not run again. */
  readonly close: () => Promise<void>;
}

/**
 * Starts `workers` threads, at least one: they make themselves ready while the caller goes on.
 * @param startThread replaceable for tests
 * @throws RangeError for any other number of workers
 */
export function openPool(workers: number, startThread: () => Worker = startWorker): Pool {
  assertWholeNumber(workers, 'workers', 1);
  let job: DrawJob | undefined;
  let closed = false;
  const start = () => {
    const thread = watched(startThread());
    if (job !== undefined) thread.postMessage(job);
    return thread;
  };
  const threads = Array.from({ length: workers }, start);
  return {
    tell: (next) => {
      job = next;
      for (const thread of threads) thread.postMessage(job);
    },
    run: (handout) => runOnThreads({ threads, start, isClosed: () => closed }, handout),
    close: async () => {
      closed = true;
      await Promise.all(threads.map((thread) => thread.terminate()));
    },
  };
}

interface Threads {
  readonly threads: Worker[];
  readonly start: () => Worker;
  readonly isClosed: () => boolean;
}

async function runOnThreads({ threads, start, isClosed }: Threads, handout: Handout): Promise<void> {
  let broken = false;
  const again = async (seat: number, shard: Shard, error: unknown): Promise<OutcomeRows> => {
    if (isClosed()) throw asError(error);
    handout.onTrouble?.(
      `A worker stopped (${wordOf(error)}); its draws ${shard.from} to ${shard.to - 1} are run again.`,
    );
    await threads[seat]!.terminate();
    threads[seat] = start();
    return runOn(threads[seat], shard);
  };
  const keepBusy = async (seat: number): Promise<void> => {
    try {
      for (let shard = handout.next(); shard !== undefined; shard = broken ? undefined : handout.next()) {
        const handedOut = shard;
        const rows = await runOn(threads[seat]!, shard).catch((error: unknown) =>
          again(seat, handedOut, error),
        );
        handout.onRows(shard, rows);
      }
    } catch (error) {
      broken = true;
      throw error;
    }
  };
  const ends = await Promise.allSettled(threads.map((_, seat) => keepBusy(seat)));
  for (const end of ends) if (end.status === 'rejected') throw end.reason;
}

/** Threads that broke down or ended, and why: between two shards nobody else is listening. */
const ended = new WeakMap<Worker, Error>();

function watched(worker: Worker): Worker {
  worker.on('error', (error: unknown) => ended.set(worker, asError(error)));
  worker.on('exit', (code: number) => {
    if (!ended.has(worker)) ended.set(worker, new Error(`thread ended with code ${code}`));
  });
  return worker;
}

function asError(error: unknown): Error {
  return error instanceof Error ? error : new Error(wordOf(error));
}

function wordOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function runOn(worker: Worker, shard: Shard): Promise<OutcomeRows> {
  return new Promise((resolve, reject) => {
    const done = () => {
      worker.off('message', onMessage).off('error', onEnd).off('exit', onEnd);
    };
    const onMessage = ({ rows }: { rows: OutcomeRows }) => {
      done();
      resolve(rows);
    };
    const onEnd = () => {
      done();
      reject(ended.get(worker)!);
    };
    if (ended.has(worker)) return reject(ended.get(worker)!);
    worker.on('message', onMessage).on('error', onEnd).on('exit', onEnd);
    worker.postMessage(shard);
  });
}
