/**
 * (d) Memory, each figure in a Node process of its own (memory-child.ts): bytes allocated per draw, and the most memory
 * that a study ever holds.
 */
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Scenario } from '../../packages/sim/src/index.ts';
import { plain, type Figure } from './figure.ts';
import type { Allocated, MemoryTask, Peak } from './memory-child.ts';
import type { Session } from './session.ts';
import { cheapest, hearInterruption } from './timing.ts';
import { variant } from './variant.ts';

const CHILD = fileURLToPath(new URL('memory-child.ts', import.meta.url));
const MEGABYTE = 1e6;

/** So large a young generation that nothing is collected while we count; the child checks that. */
const UNCOLLECTED = ['--expose-gc', '--min-semi-space-size=256', '--max-semi-space-size=256'];

export async function measureMemory(session: Session): Promise<Figure[]> {
  return [...(await measureAllocation(session)), ...(await measurePeak(session))];
}

async function measureAllocation(session: Session): Promise<Figure[]> {
  const scenario = variant(session.demo, { alternatives: 1 });
  const repeats = session.effort.rounds;
  const allocated = await inChild<Allocated[]>(
    session,
    { kind: 'allocation', scenario, repeats },
    UNCOLLECTED,
  );
  const strategies = scenario.alternatives[0]!.household.strategies.length;
  const figureOf = (what: keyof Allocated, name: string): Figure[] => {
    const runs = allocated.map((a) => a[what]);
    const collected = runs.some((r) => r.collections > 0);
    const note = collected ? 'at least: memory was collected meanwhile' : undefined;
    const label = (part: string) => ({
      measurement: 'memory',
      name: `${name}: ${part}`,
      ...(note && { note }),
    });
    return [
      plain(label('heap'), 'kB/draw', cheapest(runs.map((r) => r.heapBytes / 1000)), repeats),
      plain(label('array buffers'), 'kB/draw', cheapest(runs.map((r) => r.arrayBufferBytes / 1000)), repeats),
    ];
  };
  return [
    ...figureOf('making', 'allocated making a draw'),
    ...figureOf('stepping', `allocated stepping 1 × ${strategies}`),
    ...figureOf('shard', `allocated by runShard, 1 × ${strategies}`),
  ];
}

async function measurePeak(session: Session): Promise<Figure[]> {
  const { draws: counts, horizonDays } = session.effort.peakMemory;
  const scenario = variant(session.demo, { horizonDays });
  const note = `${horizonDays}-day horizon, 2 alternatives, no worker threads, summary included`;
  const figures: Figure[] = [];
  for (const draws of counts) {
    const { loadedBytes, peakBytes } = await inChild<Peak>(session, { kind: 'peak', scenario, draws }, []);
    const megabytes = (name: string, bytes: number) =>
      plain({ measurement: 'memory', name, note }, 'MB', cheapest([bytes / MEGABYTE]), 1);
    if (figures.length === 0) figures.push(megabytes('resident before the first draw', loadedBytes));
    figures.push(megabytes(`most resident, ${draws.toLocaleString('en')} draws`, peakBytes));
  }
  return figures;
}

/** Runs a task in a fresh process and returns what it sends back. */
async function inChild<Answer>(
  { signal }: Session,
  task: MemoryTask<Scenario>,
  flags: readonly string[],
): Promise<Answer> {
  await hearInterruption(signal);
  return new Promise((resolve, reject) => {
    const child = fork(CHILD, {
      execArgv: [...process.execArgv, ...flags],
      serialization: 'advanced',
      signal,
    });
    child.once('message', (answer) => resolve(answer as Answer));
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the memory measurement ended with code ${code}`)));
    child.send(task);
  });
}
