/** Shards across worker threads: handed out one at a time, first come, first served. */
import type { Worker } from 'node:worker_threads';
import type { Scenario } from '../scenario/scenario.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { startWorker } from './start-worker.ts';

export interface Shard {
  readonly from: number;
  readonly to: number;
}

export interface PoolOptions {
  readonly workers: number;
  /** The next shard to run, or undefined when there is none; asked again whenever a thread is free. */
  readonly next: () => Shard | undefined;
  readonly onRows: (shard: Shard, rows: OutcomeRows) => void;
  /** Told when a thread breaks down; its shard is run once more on a new thread. */
  readonly onTrouble?: ((message: string) => void) | undefined;
  /** Starts a thread; replaceable for tests. */
  readonly start?: (scenario: Scenario, seed: string) => Worker;
}

/**
 * Resolves when `next` has no more and every shard handed out is done. Rejects when a shard breaks two threads; the
 * others then finish what they have begun and are handed nothing more, so that nothing runs on.
 */
export async function runPool(scenario: Scenario, seed: string, options: PoolOptions): Promise<void> {
  const start = options.start ?? startWorker;
  let broken = false;
  const keepBusy = async (): Promise<void> => {
    let worker = start(scenario, seed);
    try {
      for (let shard = options.next(); shard !== undefined; shard = broken ? undefined : options.next()) {
        let rows: OutcomeRows;
        try {
          rows = await runOn(worker, shard);
        } catch (error) {
          options.onTrouble?.(
            `A worker stopped (${wordOf(error)}); its draws ${shard.from} to ${shard.to - 1} are run again.`,
          );
          await worker.terminate();
          worker = start(scenario, seed);
          rows = await runOn(worker, shard);
        }
        options.onRows(shard, rows);
      }
    } catch (error) {
      broken = true;
      throw error;
    } finally {
      await worker.terminate();
    }
  };
  const ends = await Promise.allSettled(Array.from({ length: options.workers }, keepBusy));
  for (const end of ends) if (end.status === 'rejected') throw end.reason;
}

function wordOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function runOn(worker: Worker, shard: Shard): Promise<OutcomeRows> {
  return new Promise((resolve, reject) => {
    const done = () => {
      worker.off('message', onMessage).off('error', onError).off('exit', onExit);
    };
    const onMessage = ({ rows }: { rows: OutcomeRows }) => {
      done();
      resolve(rows);
    };
    const onError = (error: unknown) => {
      done();
      reject(error instanceof Error ? error : new Error(wordOf(error)));
    };
    const onExit = (code: number) => {
      done();
      reject(new Error(`thread ended with code ${code}`));
    };
    worker.on('message', onMessage).on('error', onError).on('exit', onExit);
    worker.postMessage(shard);
  });
}
