/** Short samples, many times, with the yardstick read in between: what noise on the machine leaves standing. */
import { median, min } from 'simple-statistics';
import { Bench } from 'tinybench';
import type { Session } from './session.ts';

/** Does the same work at every call and returns the milliseconds its timed part took. */
export type Part = () => number;

export interface Spread {
  readonly best: number;
  readonly median: number;
}

export interface Timing {
  /** Milliseconds for all parts together: the sum of each part's best, and of each part's median. */
  readonly ms: Spread;
  /** Million inverter-minutes per second, read around these samples; null without a compiler. */
  readonly yardstick: Spread | null;
  /** Samples of each part. */
  readonly samples: number;
}

/**
 * Times parts one by one, so that a sample lasts a few milliseconds and many of them pass undisturbed.
 *
 * @throws the signal's reason when it is given while measuring
 */
export async function timeParts(session: Session, parts: readonly Part[]): Promise<Timing> {
  const { effort, signal } = session;
  const samples = parts.map((): number[] => []);
  const readings: number[] = [];
  const readYardstick = async () => {
    readings.push(...((await session.yardstick?.read(effort.yardstickRuns, signal)) ?? []));
  };
  await warmUp(session, parts);
  for (let round = 0; round < effort.rounds; round++) {
    await readYardstick();
    const taken = await sampleRound(session, parts);
    taken.forEach((fresh, part) => samples[part]!.push(...fresh));
    await hearInterruption(signal);
  }
  await readYardstick();
  return {
    ms: { best: total(samples.map(min)), median: total(samples.map(median)) },
    yardstick: fastest(readings),
    samples: samples[0]?.length ?? 0,
  };
}

/** By processor time, so that a busy machine does not cut it short. */
async function warmUp({ effort, signal }: Session, parts: readonly Part[]): Promise<void> {
  const from = process.cpuUsage();
  const seconds = () => (process.cpuUsage(from).user + process.cpuUsage(from).system) / 1e6;
  while (seconds() < effort.warmUpSeconds) {
    for (const part of parts) part();
    await hearInterruption(signal);
  }
}

async function sampleRound({ effort, signal }: Session, parts: readonly Part[]): Promise<number[][]> {
  const bench = new Bench({
    time: 0,
    iterations: effort.samplesPerRound,
    warmupTime: 0,
    warmupIterations: 1,
    retainSamples: true,
    throws: true,
    signal,
  });
  parts.forEach((part, i) => bench.add(String(i), () => ({ overriddenDuration: part() }), { async: false }));
  await bench.run();
  return bench.tasks.map(({ name, result }) => {
    if (result.state !== 'completed') throw new Error(`part ${name} was not measured: ${result.state}`);
    return [...(result.latency.samples ?? [])];
  });
}

/** Lets the event loop turn, so that Ctrl+C is heard. */
export async function hearInterruption(signal: AbortSignal): Promise<void> {
  await new Promise((resolve) => setImmediate(resolve));
  signal.throwIfAborted();
}

/** Best (largest) and median of speeds; null when there are none. */
export function fastest(speeds: readonly number[]): Spread | null {
  return speeds.length === 0 ? null : { best: Math.max(...speeds), median: median([...speeds]) };
}

/** Best (smallest) and median of costs. */
export function cheapest(costs: readonly number[]): Spread {
  return { best: min([...costs]), median: median([...costs]) };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
