/** A whole study on this machine's cores. */
import type { Scenario } from '../scenario/scenario.ts';
import { assertAboveZero, assertWholeNumber } from '../trials/assert-number.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { CollectedRows } from '../trials/collected-rows.ts';
import { columnsOf, runShard } from '../trials/shard.ts';
import { nextLook, tightness } from '../trials/stopping-rule.ts';
import { assertStudyOptions, prepareStudy, type RowsWanted, type Study } from '../trials/study.ts';
import { openPool, type Pool, type Shard } from './shard-pool.ts';

/** What is asked of a whole study, and who is told how far it is. */
export interface RunOptions {
  /** Any text; the same text gives the same draws. */
  readonly seed: string;
  /** Default: whole outcomes, which a headline needs too. */
  readonly rows?: RowsWanted | undefined;
  /** Most draws to do, a whole number ≥ 1. */
  readonly draws: number;
  /** Worker threads, a whole number; 0 = in this thread. */
  readonly workers: number;
  /** Threads to use in the place of new ones, for one study after another; the caller closes them. */
  readonly pool?: Pool | undefined;
  /** Stop before `draws` once the headline is known to ± so many days, > 0; looked at after 200, 400, 800, … draws. */
  readonly untilHalfWidthDays?: number | undefined;
  readonly onProgress?: ((done: number, draws: number) => void) | undefined;
  readonly onTrouble?: ((message: string) => void) | undefined;
  /** Stops handing out draws; those begun are finished and kept. */
  readonly signal?: AbortSignal | undefined;
}

/** A study that was run: its rows, and how it ended. */
export interface StudyRun {
  readonly study: Study;
  readonly rows: OutcomeRows;
  readonly draws: number;
  readonly ended: 'all draws done' | 'tight enough' | 'interrupted';
  readonly seconds: number;
}

/**
 * Runs the draws 0, 1, 2, … Rows are in draw order and the same bits for any number of workers.
 *
 * @throws RangeError or TypeError naming the option that cannot be used, before anything is begun
 */
export async function runStudy(scenario: Scenario, options: RunOptions): Promise<StudyRun> {
  assertRunOptions(options);
  const started = performance.now();
  const { pool: given, seed, rows: wanted } = options;
  const pool = given ?? poolFor(options); // threads start while the study is prepared here
  pool?.tell({ job: 'study', scenario, seed, rows: wanted });
  try {
    const study = prepareStudy(scenario, options);
    const { rows, draws, ended } = await runBatches(study, pool, options);
    return { study, rows, draws, ended, seconds: (performance.now() - started) / 1000 };
  } finally {
    if (given === undefined) await pool?.close();
  }
}

function assertRunOptions(options: RunOptions): void {
  const { draws, workers, untilHalfWidthDays } = options;
  assertStudyOptions(options);
  assertWholeNumber(draws, 'draws', 1);
  assertWholeNumber(workers, 'workers', 0);
  if (untilHalfWidthDays !== undefined) assertAboveZero(untilHalfWidthDays, 'untilHalfWidthDays');
}

/** As many threads as can be kept busy; undefined: none are wanted. */
function poolFor({ draws, workers, signal }: RunOptions): Pool | undefined {
  if (workers === 0 || signal?.aborted === true) return undefined;
  return openPool(Math.min(workers, draws));
}

/** All draws at once, or up to one look after the other; the same threads throughout. */
async function runBatches(
  study: Study,
  pool: Pool | undefined,
  options: RunOptions,
): Promise<Pick<StudyRun, 'rows' | 'draws' | 'ended'>> {
  const { draws, untilHalfWidthDays } = options;
  const rows = new CollectedRows(columnsOf(study), study.alternatives.length * study.strategies.length);
  let done = 0;
  while (done < draws) {
    const to = untilHalfWidthDays === undefined ? draws : Math.min(draws, nextLook(done));
    rows.reserve(to);
    done = await runBatch(study, pool, rows, done, to, options);
    if (done < to) return { rows: rows.first(done), draws: done, ended: 'interrupted' };
    if (untilHalfWidthDays !== undefined && done < draws) {
      const { tightEnough } = tightness(study, rows.first(done), untilHalfWidthDays);
      if (tightEnough) return { rows: rows.first(done), draws: done, ended: 'tight enough' };
    }
  }
  return { rows: rows.first(done), draws: done, ended: 'all draws done' };
}

const MOST_AT_ONCE = 20;

/** Draws of the next shard: many while there are many left, few at the end, so that all threads finish together. */
function shardSize(left: number, workers: number): number {
  return Math.max(1, Math.min(MOST_AT_ONCE, Math.ceil(left / (Math.max(1, workers) * 4))));
}

/** @returns the draw up to which all are done: `to` unless interrupted. */
async function runBatch(
  study: Study,
  pool: Pool | undefined,
  collected: CollectedRows,
  from: number,
  to: number,
  options: RunOptions,
): Promise<number> {
  let handedOut = from;
  let finished = from;
  const next = (): Shard | undefined => {
    if (handedOut >= to || options.signal?.aborted === true) return undefined;
    const shard = { from: handedOut, to: handedOut + shardSize(to - handedOut, options.workers) };
    handedOut = shard.to;
    return shard;
  };
  const onRows = (shard: Shard, rows: OutcomeRows) => {
    collected.add(shard.from, rows);
    finished += shard.to - shard.from;
    options.onProgress?.(finished, options.draws);
  };
  if (pool === undefined) await runHere(study, next, onRows);
  else await pool.run({ next, onRows, onTrouble: options.onTrouble });
  return handedOut;
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
