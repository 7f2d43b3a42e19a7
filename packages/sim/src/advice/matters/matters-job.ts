/** The draws behind the question what matters: runtimes with some of the inputs held or swapped. MODEL.md §18. */
import { mixedStreams, type StreamSwap } from '../../chance/mixed-streams.ts';
import { streamsOf, type Streams } from '../../chance/streams.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { drawnRuntimeMinutes, type RunChoice } from '../../trials/live-draw.ts';
import type { OutcomeRows } from '../../trials/outcome-rows.ts';
import { prepareStudy, type Study } from '../../trials/study.ts';
import { varyStudy } from '../../trials/vary-study.ts';
import { narrowedTo } from '../one-run.ts';
import { skyKWhM2 } from './sky-brightness.ts';
import { inputsOf, type UncertainInput } from './inputs.ts';
import { variationOf } from './uncertain-values.ts';

/** Which runs: skies ranked by brightness, one input at a time, or the global measure. */
export type MattersTask =
  | { readonly task: 'skies' }
  /** `dull` and `bright`: draws whose skies stand in at the weather's low and high, taken in turn. */
  | { readonly task: 'swings'; readonly dull: readonly number[]; readonly bright: readonly number[] }
  | { readonly task: 'indices' };

/** Plain data: goes to any thread. */
export type MattersJob = MattersTask &
  RunChoice & { readonly job: 'matters'; readonly scenario: Scenario; readonly seed: string };

type Measure = (draw: number) => number;

/** Rows with one column per measure: `draw` and minutes, or kWh/m² for skies. */
export function openMattersJob(job: MattersJob): (from: number, to: number) => OutcomeRows {
  const study = prepareStudy(narrowedTo(job.scenario, job), { seed: job.seed });
  const measures = measuresOf(job, study, inputsOf(job.scenario, job.alternative));
  return (from, to) => {
    const length = Math.max(0, to - from);
    const columns: Record<string, Float64Array> = { draw: Float64Array.from({ length }, (_, i) => from + i) };
    for (const name of measures.keys()) columns[name] = new Float64Array(length);
    for (let i = 0; i < length; i++)
      for (const [name, measure] of measures) columns[name]![i] = measure(from + i);
    return { length, columns };
  };
}

function measuresOf(
  job: MattersJob,
  study: Study,
  inputs: readonly UncertainInput[],
): ReadonlyMap<string, Measure> {
  const drawn = (index: number) => streamsOf(job.seed, index);
  if (job.task === 'skies') return new Map([['kWhM2', (draw: number) => skyKWhM2(study, drawn(draw))]]);
  const minutes = (streams: Streams) => runtimeWith(study, streams);
  return job.task === 'swings'
    ? swingMeasures(job, inputs, drawn, minutes)
    : indexMeasures(inputs, drawn, minutes);
}

function runtimeWith(study: Study, streams: Streams): number {
  const varied = varyStudy(study, variationOf(study.scenario.unknowns ?? {}, streams));
  return drawnRuntimeMinutes(varied, streams, { alternative: 0, strategy: 0 }, study);
}

/** Column of the runtimes with every value at its middle; `low:id` and `high:id` beside it. */
export const MIDDLE = 'middle';

function swingMeasures(
  { dull, bright }: Extract<MattersTask, { task: 'swings' }>,
  inputs: readonly UncertainInput[],
  drawn: (index: number) => Streams,
  minutes: (streams: Streams) => number,
): Map<string, Measure> {
  const middle: StreamSwap[] = inputs.flatMap(({ isValue, numbers }) =>
    isValue ? { ...numbers, from: 0.5 } : [],
  );
  const measures = new Map<string, Measure>([[MIDDLE, (draw) => minutes(mixedStreams(drawn(draw), middle))]]);
  for (const { id, numbers, ends } of inputs)
    for (const [end, skies] of [
      ['low', dull],
      ['high', bright],
    ] as const) {
      const swap = (draw: number): StreamSwap =>
        ends.held === undefined
          ? { ...numbers, from: drawn(skies[draw % skies.length]!) }
          : { ...ends.held.numbers, from: ends.held[end] };
      measures.set(`${end}:${id}`, (draw) => minutes(mixedStreams(drawn(draw), [...middle, swap(draw)])));
    }
  return measures;
}

/** Rows of Saltelli et al. 2010: `a` is draw 2j, `b` draw 2j + 1, `ab:id` is `a` with one input from `b`. */
function indexMeasures(
  inputs: readonly UncertainInput[],
  drawn: (index: number) => Streams,
  minutes: (streams: Streams) => number,
): Map<string, Measure> {
  const a = (row: number) => drawn(2 * row);
  const b = (row: number) => drawn(2 * row + 1);
  return new Map<string, Measure>([
    ['a', (row) => minutes(a(row))],
    ['b', (row) => minutes(b(row))],
    ...inputs.map(({ id, numbers }): [string, Measure] => [
      `ab:${id}`,
      (row) => minutes(mixedStreams(a(row), [{ ...numbers, from: b(row) }])),
    ]),
  ]);
}
