/** Threads that break down. Workers are played by event emitters. */
import { EventEmitter } from 'node:events';
import type { Worker } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { openPool, type Shard } from '../../../packages/sim/src/node/shard-pool.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const job = {
  job: 'study',
  scenario: tinyScenario({ circuits: { a: { watts: 1 } }, hours: 1 }),
  seed: 'seed',
} as const;

/** What a played worker does with a shard: answers, breaks with an error, or ends. */
type Doing = 'answers' | 'breaks' | 'ends';

class PlayedWorker extends EventEmitter {
  terminated = false;
  readonly told: unknown[] = [];

  constructor(private readonly does: (shard: Shard) => Doing) {
    super();
  }

  postMessage(message: Shard | typeof job): void {
    if ('job' in message) {
      this.told.push(message);
      return;
    }
    const shard = message;
    setImmediate(() => {
      const doing = this.does(shard);
      if (doing === 'answers')
        this.emit('message', { from: shard.from, rows: { length: shard.to - shard.from, columns: {} } });
      else if (doing === 'breaks') this.emit('error', new Error('out of memory'));
      else this.emit('exit', 7);
    });
  }

  terminate(): Promise<number> {
    this.terminated = true;
    return Promise.resolve(0);
  }
}

/** Runs ten shards of two draws on played workers; `does` is told how often the shard was tried before. */
async function play(workers: number, does: (shard: Shard, tries: number) => Doing) {
  const started: PlayedWorker[] = [];
  const tries = new Map<number, number>();
  const trouble: string[] = [];
  const done: number[] = [];
  let handedOut = 0;
  const start = () => {
    const worker = new PlayedWorker((shard) => {
      const before = tries.get(shard.from) ?? 0;
      tries.set(shard.from, before + 1);
      return does(shard, before);
    });
    started.push(worker);
    return worker as unknown as Worker;
  };
  const next = () => (handedOut < 20 ? { from: handedOut, to: (handedOut += 2) } : undefined);
  const pool = openPool(workers, start);
  pool.tell(job);
  const outcome = await pool
    .run({
      next,
      onRows: ({ from }) => done.push(from),
      onTrouble: (message) => trouble.push(message),
    })
    .then(
      () => 'resolved',
      (error: unknown) => (error as Error).message,
    );
  await pool.close();
  return { outcome, started, trouble, done: done.sort((a, b) => a - b), handedOut: () => handedOut };
}

const EVERY_SHARD = [0, 2, 4, 6, 8, 10, 12, 14, 16, 18];

describe('a pool of threads', () => {
  it('runs every shard once and ends every thread', async () => {
    const { outcome, started, done, trouble } = await play(3, () => 'answers');
    expect(outcome).toBe('resolved');
    expect(done).toEqual(EVERY_SHARD);
    expect(trouble).toEqual([]);
    expect(started.map((w) => w.terminated)).toEqual([true, true, true]);
  });

  it.each(['breaks', 'ends'] as const)(
    'tells of a thread that %s and runs its shard once more on a new one',
    async (doing) => {
      const { outcome, started, done, trouble } = await play(2, ({ from }, tries) =>
        from === 6 && tries === 0 ? doing : 'answers',
      );
      const why = doing === 'breaks' ? 'out of memory' : 'thread ended with code 7';
      expect(outcome).toBe('resolved');
      expect(done).toEqual(EVERY_SHARD);
      expect(trouble).toEqual([`A worker stopped (${why}); its draws 6 to 7 are run again.`]);
      expect(started).toHaveLength(3);
      expect(started.every((w) => w.terminated)).toBe(true);
    },
  );

  it('gives up when a shard breaks two threads, hands out nothing more and leaves no thread running', async () => {
    const { outcome, started, trouble, done, handedOut } = await play(2, ({ from }) =>
      from === 6 ? 'breaks' : 'answers',
    );
    expect(outcome).toBe('out of memory');
    expect(trouble).toHaveLength(1);
    expect(started.every((w) => w.terminated)).toBe(true);
    expect(done).not.toContain(6);
    const handedOutThen = handedOut();
    expect(handedOutThen).toBeLessThan(20);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(handedOut()).toBe(handedOutThen);
  });

  it('that is closed in the middle of a shard starts no thread for it again', async () => {
    const started: PlayedWorker[] = [];
    const trouble: string[] = [];
    const pool = openPool(1, () => {
      const worker = new PlayedWorker(() => 'ends'); // as a thread does that is terminated
      started.push(worker);
      return worker as unknown as Worker;
    });
    pool.tell(job);
    const run = pool.run({
      next: () => ({ from: 0, to: 2 }),
      onRows: () => undefined,
      onTrouble: (message) => trouble.push(message),
    });
    await pool.close();
    await expect(run).rejects.toThrow('thread ended with code 7');
    expect({ started: started.length, trouble }).toEqual({ started: 1, trouble: [] });
  });

  it('keeps its threads from one handout to the next, and replaces one that ended in between', async () => {
    const started: PlayedWorker[] = [];
    const pool = openPool(2, () => {
      started.push(new PlayedWorker(() => 'answers'));
      return started.at(-1)! as unknown as Worker;
    });
    pool.tell(job);
    const done: number[] = [];
    const trouble: string[] = [];
    const handout = (shards: Shard[]) =>
      pool.run({
        next: () => shards.shift(),
        onRows: ({ from }) => done.push(from),
        onTrouble: (message) => trouble.push(message),
      });
    await handout([
      { from: 0, to: 1 },
      { from: 1, to: 2 },
    ]);
    expect(started).toHaveLength(2);
    started[1]!.emit('error', new Error('out of memory'));
    await handout([
      { from: 2, to: 3 },
      { from: 3, to: 4 },
    ]);
    expect(done).toEqual([0, 1, 2, 3]);
    expect(trouble).toEqual(['A worker stopped (out of memory); its draws 3 to 3 are run again.']);
    expect(started).toHaveLength(3);
    const other = { ...job, seed: 'another seed' };
    pool.tell(other);
    await handout([{ from: 4, to: 5 }]);
    expect(started.map(({ told }) => told)).toEqual([[job, other], [job], [job, other]]);
    await pool.close();
    expect(started.every((w) => w.terminated)).toBe(true);
  });

  it('survives as many broken threads as there are shards, one each', async () => {
    const { outcome, done, trouble } = await play(4, (_, tries) => (tries === 0 ? 'ends' : 'answers'));
    expect(outcome).toBe('resolved');
    expect(done).toEqual(EVERY_SHARD);
    expect(trouble).toHaveLength(10);
  });
});
