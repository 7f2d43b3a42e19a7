/** A worker thread: opens the job it was started with, then runs the draws it is handed. */
import { parentPort, workerData } from 'node:worker_threads';
import { openJob, type DrawJob } from '../advice/draw-job.ts';

const run = openJob(workerData as DrawJob);

parentPort!.on('message', ({ from, to }: { from: number; to: number }) => {
  const rows = run(from, to);
  parentPort!.postMessage(
    { from, rows },
    Object.values(rows.columns).map((column) => column.buffer as ArrayBuffer),
  );
});
