import { Worker } from 'node:worker_threads';
import type { Scenario } from '../scenario/scenario.ts';

/** Starts a thread that runs shards; from TypeScript source it needs the same loader that runs this file. */
export function startWorker(scenario: Scenario, seed: string): Worker {
  const fromSource = import.meta.url.endsWith('.ts');
  const url = new URL(fromSource ? './study-worker.ts' : './study-worker.js', import.meta.url);
  const workerData = { scenario, seed };
  if (!fromSource) return new Worker(url, { workerData });
  const boot = `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(url.href)}); })`;
  return new Worker(boot, { eval: true, workerData, execArgv: [] });
}
