/** A worker thread: prepares the study once, then runs the shards it is handed. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Scenario } from '../scenario/scenario.ts';
import { runShard } from '../trials/shard.ts';
import { prepareStudy } from '../trials/study.ts';

const { scenario, seed } = workerData as { scenario: Scenario; seed: string };
const study = prepareStudy(scenario, { seed });

parentPort!.on('message', ({ from, to }: { from: number; to: number }) => {
  const rows = runShard(study, from, to);
  parentPort!.postMessage(
    { from, rows },
    Object.values(rows.columns).map((column) => column.buffer as ArrayBuffer),
  );
});
