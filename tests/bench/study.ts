/** (c) Whole studies: making draws and stepping them, on one core, and on worker threads. */
import { availableParallelism } from 'node:os';
import { prepareStudy, runShard, type Scenario } from '../../packages/sim/src/index.ts';
import { runStudy } from '../../packages/sim/src/node.ts';
import { inverterMinutesPerDraw, over, plain, speed, type Figure } from './figure.ts';
import { processorMs } from './processor-clock.ts';
import { drawNumbers, SEED, type Session } from './session.ts';
import { fastest, hearInterruption, readYardstick, sum, timeParts, type Spread } from './timing.ts';
import { variant } from './variant.ts';

export async function measureStudy(session: Session): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const alternatives of [1, 2]) figures.push(await measureShard(session, alternatives));
  return [...figures, ...(await measureWorkers(session))];
}

async function measureShard(session: Session, alternatives: number): Promise<Figure> {
  const study = prepareStudy(variant(session.demo, { alternatives }), { seed: SEED });
  const draws = drawNumbers(session.effort.draws);
  const timeDraw = (draw: number) => {
    const from = processorMs();
    runShard(study, draw, draw + 1);
    return [processorMs() - from];
  };
  const { laps, ...timing } = await timeParts(
    session,
    draws.map((draw) => () => timeDraw(draw)),
  );
  const name = `whole study, ${alternatives} × ${study.strategies.length}, one core`;
  const inverterMinutes = inverterMinutesPerDraw(study) * draws.length;
  return speed({ measurement: 'study', name }, { ...timing, inverterMinutes, ms: sum(laps) });
}

/** Speeds of one study on worker threads, million inverter-minutes per second. */
interface WorkerSpeeds {
  /** From the call to the last row: starting the threads and warming them up included. */
  readonly whole: number[];
  /** The last three quarters of the draws. */
  readonly running: number[];
}

async function measureWorkers(session: Session): Promise<Figure[]> {
  const counts = [...new Set([1, availableParallelism()])];
  const scenario = variant(session.demo, { alternatives: 2 });
  const speeds = counts.map((): WorkerSpeeds => ({ whole: [], running: [] }));
  const readings: number[] = [];
  const machine = counts.map((): number[] => []);
  for (let repeat = 0; repeat < session.effort.studyRepeats; repeat++) {
    for (let i = 0; i < counts.length; i++) {
      readings.push(...(await readYardstick(session)));
      machine[i]!.push(...(await yardsticksAtOnce(session, counts[i]!)));
      const { whole, running } = await timeWorkers(session, scenario, counts[i]!);
      speeds[i]!.whole.push(whole);
      speeds[i]!.running.push(running);
    }
  }
  readings.push(...(await readYardstick(session)));
  const yardstick = fastest(readings);
  const figures = (['whole', 'running'] as const).flatMap((span) =>
    workerFigures(
      session,
      span,
      counts,
      speeds.map((s) => fastest(s[span])!),
      yardstick,
    ),
  );
  return [...figures, ...machineFigures(session, counts, machine)];
}

function workerFigures(
  { effort }: Session,
  span: keyof WorkerSpeeds,
  counts: readonly number[],
  speeds: readonly Spread[],
  yardstick: Spread | null,
): Figure[] {
  const label = (name: string) => ({
    measurement: 'study',
    name: `${name}, ${span === 'whole' ? 'starting them included' : 'once running'}`,
    note: `${effort.studyDraws} draws, 2 alternatives`,
  });
  const samples = effort.studyRepeats;
  const figures = counts.map((workers, i) => ({
    ...plain(
      label(`study on ${workers} worker${workers === 1 ? '' : 's'}`),
      'M inverter-min/s',
      speeds[i]!,
      samples,
    ),
    ofYardstick: over(speeds[i]!, yardstick),
  }));
  const ratio = over(speeds.at(-1)!, speeds[0]!)!;
  return [...figures, plain(label(`${counts.at(-1)!} workers over 1`), 'times', ratio, samples)];
}

/** One after the other they do as much each; at once they share what cores share, here and with other guests. */
async function yardsticksAtOnce({ yardstick, signal }: Session, count: number): Promise<number[]> {
  return yardstick === undefined ? [] : [await yardstick.readTogether(count, signal)];
}

/** What the machine itself makes of more cores: no work on threads can be held to more. */
function machineFigures(
  { effort }: Session,
  counts: readonly number[],
  machine: readonly (readonly number[])[],
): Figure[] {
  const one = fastest(machine[0]!);
  const all = fastest(machine.at(-1)!);
  if (one === null || all === null) return [];
  const label = { measurement: 'study', name: `${counts.at(-1)!} yardsticks at once over 1` };
  return [plain(label, 'times', over(all, one)!, effort.studyRepeats)];
}

async function timeWorkers({ effort, signal }: Session, scenario: Scenario, workers: number) {
  const marks: { readonly done: number; readonly at: number }[] = [];
  const onProgress = (done: number) => marks.push({ done, at: performance.now() });
  const draws = effort.studyDraws;
  const { study, seconds, rows } = await runStudy(scenario, {
    seed: SEED,
    draws,
    workers,
    signal,
    onProgress,
  });
  await hearInterruption(signal);
  if (rows.length !== draws * study.strategies.length * study.alternatives.length)
    throw new Error('rows are missing');
  const from = marks.find(({ done }) => done >= draws / 4)!;
  const to = marks.at(-1)!;
  const millions = inverterMinutesPerDraw(study) / 1e6;
  return {
    whole: (millions * draws) / seconds,
    running: (millions * (to.done - from.done)) / ((to.at - from.at) / 1000),
  };
}
