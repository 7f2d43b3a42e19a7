/** Short laps, many times, with the yardstick read in between: what noise on the machine leaves standing. */
import { median, min } from 'simple-statistics';
import { Bench } from 'tinybench';
import { processorMs } from './processor-clock.ts';
import type { Session } from './session.ts';

/** Does the same work at every call; returns the processor milliseconds of each of its laps, as many at every call. */
export type Part = () => readonly number[];

export interface Spread {
  readonly best: number;
  readonly median: number;
}

export interface Timing {
  /** Per lap, milliseconds for all parts together: the sum of each part's best, and of each part's median. */
  readonly laps: readonly Spread[];
  /** Million inverter-minutes per second, read around these samples; null without a compiler. */
  readonly yardstick: Spread | null;
  /** Samples of each part. */
  readonly samples: number;
}

/**
 * Times parts one by one. Best and median are taken of each lap of each part before adding up: a lap lasts about a
 * millisecond, so that on a busy machine too many of them pass undisturbed.
 *
 * @throws the signal's reason when it is given while measuring
 */
export async function timeParts(session: Session, parts: readonly Part[]): Promise<Timing> {
  const { effort } = session;
  const samples = parts.map((): (readonly number[])[] => []);
  const readings: number[] = [];
  await warmUp(session, parts);
  for (let round = 0; round < effort.rounds; round++) {
    readings.push(...(await readYardstick(session)));
    const taken = await sampleRound(session, parts);
    taken.forEach((fresh, part) => samples[part]!.push(...fresh));
  }
  readings.push(...(await readYardstick(session)));
  const lapCount = samples[0]?.[0]?.length ?? 0;
  const laps = Array.from({ length: lapCount }, (_, l) =>
    sum(samples.map((part) => cheapest(part.map((sample) => sample[l]!)))),
  );
  return { laps, yardstick: fastest(readings), samples: samples[0]?.length ?? 0 };
}

export async function readYardstick({ yardstick, effort, signal }: Session): Promise<number[]> {
  return (await yardstick?.read(effort.yardstickRuns, signal)) ?? [];
}

/** By processor time, so that a busy machine does not cut it short. */
async function warmUp({ effort, signal }: Session, parts: readonly Part[]): Promise<void> {
  const from = processorMs();
  while (processorMs() - from < 1000 * effort.warmUpSeconds) {
    for (const part of parts) {
      part();
      await hearInterruption(signal);
    }
  }
}

async function sampleRound(
  { effort, signal }: Session,
  parts: readonly Part[],
): Promise<(readonly number[])[][]> {
  const bench = new Bench({ time: 0, iterations: effort.samplesPerRound, warmup: false, throws: true });
  const samples = parts.map((part, i) => {
    const taken: (readonly number[])[] = [];
    const run = async () => {
      const laps = part();
      taken.push(laps);
      await hearInterruption(signal);
      return { overriddenDuration: laps.reduce((total, ms) => total + ms, 0) };
    };
    bench.add(String(i), run, { async: true });
    return taken;
  });
  await bench.run();
  return samples;
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

export function sum(spreads: readonly Spread[]): Spread {
  return spreads.reduce((total, s) => ({ best: total.best + s.best, median: total.median + s.median }), {
    best: 0,
    median: 0,
  });
}
