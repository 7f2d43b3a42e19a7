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

/** A column of rows: the runtime of a draw with these streams. */
interface Column {
  readonly name: string;
  readonly streams: (row: number) => Streams;
  /** Weather and habits are those of the column before. */
  readonly keepsWorld: boolean;
}

/** Rows with one column per measure: `draw` and minutes, or kWh/m² for skies. */
export function openMattersJob(job: MattersJob): (from: number, to: number) => OutcomeRows {
  const study = prepareStudy(narrowedTo(job.scenario, job), { seed: job.seed });
  const measures = measuresOf(job, study);
  return (from, to) => {
    const length = Math.max(0, to - from);
    const columns: Record<string, Float64Array> = { draw: Float64Array.from({ length }, (_, i) => from + i) };
    for (const { name } of measures) columns[name] = new Float64Array(length);
    for (let i = 0; i < length; i++)
      for (const { name, measure } of measures) columns[name]![i] = measure(from + i);
    return { length, columns };
  };
}

interface Measure {
  readonly name: string;
  readonly measure: (row: number) => number;
}

/** In the order in which they are to be taken of each row. */
function measuresOf(job: MattersJob, study: Study): Measure[] {
  const drawn = (index: number) => streamsOf(job.seed, index);
  if (job.task === 'skies') return [{ name: 'kWhM2', measure: (draw) => skyKWhM2(study, drawn(draw)) }];
  const inputs = inputsOf(job.scenario, job.alternative);
  const columns = job.task === 'swings' ? swingColumns(job, inputs, drawn) : indexColumns(inputs, drawn);
  return columns.map(({ name, streams, keepsWorld }) => ({
    name,
    measure: (row) => runtimeWith(study, streams(row), keepsWorld),
  }));
}

function runtimeWith(study: Study, streams: Streams, keepsWorld: boolean): number {
  const varied = varyStudy(study, variationOf(study.scenario.unknowns ?? {}, streams));
  const choice = { alternative: 0, strategy: 0 };
  return drawnRuntimeMinutes(varied, streams, choice, study, keepsWorld ? 'kept' : 'drawn');
}

/** Column of the runtimes with every value at its middle; `low:id` and `high:id` beside it. */
export const MIDDLE = 'middle';

function swingColumns(
  { dull, bright }: Extract<MattersTask, { task: 'swings' }>,
  inputs: readonly UncertainInput[],
  drawn: (index: number) => Streams,
): Column[] {
  const middle: StreamSwap[] = inputs.flatMap(({ isValue, numbers }) =>
    isValue ? { ...numbers, from: 0.5 } : [],
  );
  return afterFirst(
    { name: MIDDLE, streams: (draw) => mixedStreams(drawn(draw), middle), keepsWorld: false },
    inputs.flatMap(({ id, numbers, ends, keepsWorld }) =>
      (
        [
          ['low', dull],
          ['high', bright],
        ] as const
      ).map(([end, skies]) => {
        const swap = (draw: number): StreamSwap =>
          ends.held === undefined
            ? { ...numbers, from: drawn(skies[draw % skies.length]!) }
            : { ...ends.held.numbers, from: ends.held[end] };
        const streams = (draw: number) => mixedStreams(drawn(draw), [...middle, swap(draw)]);
        return { name: `${end}:${id}`, streams, keepsWorld };
      }),
    ),
  );
}

/** Rows of Saltelli et al. 2010: `a` is draw 2j, `b` draw 2j + 1, `ab:id` is `a` with one input from `b`. */
function indexColumns(inputs: readonly UncertainInput[], drawn: (index: number) => Streams): Column[] {
  const a = (row: number) => drawn(2 * row);
  const b = (row: number) => drawn(2 * row + 1);
  return [
    ...afterFirst(
      { name: 'a', streams: a, keepsWorld: false },
      inputs.map(({ id, numbers, keepsWorld }) => ({
        name: `ab:${id}`,
        streams: (row: number) => mixedStreams(a(row), [{ ...numbers, from: b(row) }]),
        keepsWorld,
      })),
    ),
    { name: 'b', streams: b, keepsWorld: false },
  ];
}

/** Those that keep its world right after it, so that it is drawn once. */
function afterFirst(first: Column, others: readonly Column[]): Column[] {
  return [
    first,
    ...others.filter(({ keepsWorld }) => keepsWorld),
    ...others.filter(({ keepsWorld }) => !keepsWorld),
  ];
}
