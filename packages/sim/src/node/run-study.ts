/** A whole study on this machine's cores. */
import type { Scenario } from '../scenario/scenario.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { joinRows, runShard } from '../trials/shard.ts';
import { nextLook, tightness } from '../trials/stopping-rule.ts';
import { prepareStudy, type Study } from '../trials/study.ts';
import { runPool, type Shard } from './shard-pool.ts';

export interface RunOptions {
  readonly seed: string;
  /** Most draws to do, ≥ 1. */
  readonly draws: number;
  /** Worker threads; 0 = in this thread. */
  readonly workers: number;
  /** Stop before `draws` once the headline is known to ± this many days; looked at after 200, 400, 800, … draws. */
  readonly untilHalfWidthDays?: number | undefined;
  readonly onProgress?: ((done: number, draws: number) => void) | undefined;
  readonly onTrouble?: ((message: string) => void) | undefined;
  /** Stops handing out draws; those begun are finished and kept. */
  readonly signal?: AbortSignal | undefined;
}

export interface StudyRun {
  readonly study: Study;
  readonly rows: OutcomeRows;
  readonly draws: number;
  readonly ended: 'all draws done' | 'tight enough' | 'interrupted';
  readonly seconds: number;
}

/** Runs the draws 0, 1, 2, … Rows are in draw order and the same bits for any number of workers. */
export async function runStudy(scenario: Scenario, options: RunOptions): Promise<StudyRun> {
  const started = performance.now();
  const study = prepareStudy(scenario, { seed: options.seed });
  const shards: OutcomeRows[] = [];
  let done = 0;
  let ended: StudyRun['ended'] = 'all draws done';
  while (done < options.draws && ended === 'all draws done') {
    const to =
      options.untilHalfWidthDays === undefined ? options.draws : Math.min(options.draws, nextLook(done));
    const batch = await runBatch(study, done, to, options);
    shards.push(...batch.shards);
    done = batch.done;
    if (done < to) ended = 'interrupted';
    else if (options.untilHalfWidthDays !== undefined && done < options.draws) {
      if (tightness(study, joinRows(shards), options.untilHalfWidthDays).tightEnough) ended = 'tight enough';
    }
  }
  return { study, rows: joinRows(shards), draws: done, ended, seconds: (performance.now() - started) / 1000 };
}

/** Draws in a shard: enough to be worth handing over, few enough for even work and a lively progress bar. */
function shardSize(draws: number, workers: number): number {
  return Math.max(1, Math.min(20, Math.ceil(draws / (Math.max(1, workers) * 8))));
}

async function runBatch(
  study: Study,
  from: number,
  to: number,
  options: RunOptions,
): Promise<{ shards: OutcomeRows[]; done: number }> {
  const size = shardSize(to - from, options.workers);
  const shards = new Map<number, OutcomeRows>();
  let handedOut = from;
  let finished = from;
  const next = (): Shard | undefined => {
    if (handedOut >= to || options.signal?.aborted === true) return undefined;
    const shard = { from: handedOut, to: Math.min(to, handedOut + size) };
    handedOut = shard.to;
    return shard;
  };
  const onRows = (shard: Shard, rows: OutcomeRows) => {
    shards.set(shard.from, rows);
    finished += shard.to - shard.from;
    options.onProgress?.(finished, options.draws);
  };
  if (options.workers === 0) await runHere(study, next, onRows);
  else
    await runPool(study.scenario, study.seed, {
      workers: Math.min(options.workers, Math.ceil((to - from) / size)),
      next,
      onRows,
      onTrouble: options.onTrouble,
    });
  const ordered = [...shards.entries()].sort(([a], [b]) => a - b).map(([, rows]) => rows);
  return { shards: ordered, done: handedOut };
}

/** In this thread, letting others have a turn between shards so that an interruption is heard. */
async function runHere(
  study: Study,
  next: () => Shard | undefined,
  onRows: (shard: Shard, rows: OutcomeRows) => void,
): Promise<void> {
  for (let shard = next(); shard !== undefined; shard = next()) {
    onRows(shard, runShard(study, shard.from, shard.to));
    await new Promise((resolve) => setImmediate(resolve));
  }
}
