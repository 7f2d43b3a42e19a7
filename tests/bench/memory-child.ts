/** The other end of memory.ts: one task, one answer. */
import { existsSync, readFileSync } from 'node:fs';
import { PerformanceObserver } from 'node:perf_hooks';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import { prepareStudy, runShard, summarise, type Scenario } from '../../packages/sim/src/index.ts';
import { runStudy } from '../../packages/sim/src/node.ts';
import { createWorkspace, fillDraw } from '../../packages/sim/src/trials/workspace.ts';
import { SEED } from './session.ts';
import { stepRuns } from './draw-laps.ts';

export type MemoryTask<S> =
  | { readonly kind: 'allocation'; readonly scenario: S; readonly repeats: number }
  | { readonly kind: 'peak'; readonly scenario: S; readonly draws: number };

/** Per draw, between two readings of `process.memoryUsage()` with nothing collected in between. */
export interface Bytes {
  readonly heapBytes: number;
  readonly arrayBufferBytes: number;
  /** Collections in between: with any, the bytes are a lower bound. */
  readonly collections: number;
}

export interface Allocated {
  readonly making: Bytes;
  readonly stepping: Bytes;
  readonly shard: Bytes;
}

export interface Peak {
  readonly loadedBytes: number;
  readonly peakBytes: number;
}

const WARM_UP_DRAWS = 60;
const COUNTED_DRAWS = 10;

/** When the collector ran, in milliseconds of `performance.now()`. */
const collectedAt: number[] = [];

async function allocation(scenario: Scenario, repeats: number): Promise<Allocated[]> {
  new PerformanceObserver((list) => collectedAt.push(...list.getEntries().map((e) => e.startTime))).observe({
    entryTypes: ['gc'],
  });
  const study = prepareStudy(scenario, { seed: SEED });
  const work = createWorkspace(study);
  const make = (draw: number) => fillDraw(study, work, streamsOf(SEED, draw));
  const step = () => stepRuns(study, work, () => undefined);
  const shard = (draw: number) => runShard(study, draw, draw + 1);
  for (let draw = 0; draw < WARM_UP_DRAWS; draw++) {
    make(draw);
    step();
    shard(draw);
  }
  const allocated: Allocated[] = [];
  for (let i = 0; i < repeats; i++) {
    allocated.push({
      making: await count(make),
      stepping: await count(step, make),
      shard: await count(shard),
    });
  }
  return allocated;
}

/** Means over some draws; what is done before each is not counted. */
async function count(work: (draw: number) => void, before?: (draw: number) => void): Promise<Bytes> {
  globalThis.gc!();
  await turn();
  const from = performance.now();
  let [heap, arrayBuffers] = [0, 0];
  for (let draw = 0; draw < COUNTED_DRAWS; draw++) {
    before?.(draw);
    const start = process.memoryUsage();
    work(draw);
    const end = process.memoryUsage();
    heap += end.heapUsed - start.heapUsed;
    arrayBuffers += end.arrayBuffers - start.arrayBuffers;
  }
  const to = performance.now();
  await turn();
  return {
    heapBytes: heap / COUNTED_DRAWS,
    arrayBufferBytes: arrayBuffers / COUNTED_DRAWS,
    collections: collectedAt.filter((at) => at >= from && at <= to).length,
  };
}

/** Long enough for the collector's entries to be handed out. */
function turn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 20));
}

async function peak(scenario: Scenario, draws: number): Promise<Peak> {
  const loadedBytes = process.memoryUsage.rss();
  const { study, rows } = await runStudy(scenario, { seed: SEED, draws, workers: 0 });
  summarise(study, rows);
  return { loadedBytes, peakBytes: mostResidentBytes() };
}

/** Linux counts the parent's memory into a child's `maxRSS`, but not into its own high-water mark. */
function mostResidentBytes(): number {
  const status = existsSync('/proc/self/status') ? readFileSync('/proc/self/status', 'utf8') : '';
  const highWaterKB = /^VmHWM:\s+(\d+) kB/m.exec(status)?.[1];
  return (highWaterKB === undefined ? process.resourceUsage().maxRSS : Number(highWaterKB)) * 1024;
}

process.once('message', (task: MemoryTask<Scenario>) => {
  const answer =
    task.kind === 'peak' ? peak(task.scenario, task.draws) : allocation(task.scenario, task.repeats);
  void answer.then((sent) => process.send!(sent, () => process.disconnect()));
});
