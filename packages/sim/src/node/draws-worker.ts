/** A worker thread: opens the job it is told, then runs the draws of it that it is handed; then perhaps another job. */
import { parentPort } from 'node:worker_threads';
import { openJob, type DrawJob, type RunDraws } from '../advice/draw-job.ts';
import type { Shard } from './shard-pool.ts';

let run: RunDraws | undefined;

parentPort!.on('message', (message: DrawJob | Shard) => {
  if ('job' in message) {
    run = openJob(message);
    return;
  }
  const { from, to } = message;
  const rows = run!(from, to);
  parentPort!.postMessage(
    { from, rows },
    Object.values(rows.columns).map((column) => column.buffer as ArrayBuffer),
  );
});
