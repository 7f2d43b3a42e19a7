/** What matters: one-at-a-time swings and a variance-based measure of the days. MODEL.md §18. */
import { streamsOf } from '../../chance/streams.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { RunChoice } from '../../trials/live-draw.ts';
import { horizonMinutes, MINUTES_PER_DAY } from '../../trials/minutes-per-day.ts';
import type { AskDraws } from '../draw-job.ts';
import { adviceProvenance } from '../advice-provenance.ts';
import { narrowedTo } from '../one-run.ts';
import { inputsOf } from './inputs.ts';
import type { InputMatters, Matters } from './matters.ts';
import type { MattersJob, MattersTask } from './matters-job.ts';
import { sobolEstimates, type SobolEstimates } from './sobol.ts';
import { swingsOf } from './swings.ts';

/** What is asked about the things that nobody knows. */
export interface MattersQuestion extends RunChoice {
  readonly seed: string;
  /** Base rows of both measures, ≥ 20; runs are about three times as many per input. */
  readonly draws: number;
  /** Told how many runs of how many are done. */
  readonly onProgress?: ((done: number, runs: number) => void) | undefined;
}

const SKY_SHARE = 0.2;

/** Runs that the question takes. */
export function runsToDo(
  scenario: Scenario,
  { alternative, draws }: Pick<MattersQuestion, 'alternative' | 'draws'>,
): number {
  const { skies, swings, indices } = runsPerDraw(inputsOf(scenario, alternative).length);
  return draws * (skies + swings + indices);
}

const runsPerDraw = (inputs: number) => ({ skies: 1, swings: 1 + 2 * inputs, indices: 2 + inputs });

/**
 * The same question gives the same bits wherever its draws are run.
 * @throws RangeError when the choice names nothing
 */
export async function whatMatters(
  scenario: Scenario,
  question: MattersQuestion,
  ask: AskDraws,
): Promise<Matters> {
  narrowedTo(scenario, question); // refuses a choice that is not there before anything is run
  const run = taskRunner(scenario, question, ask);
  const skies = (await run({ task: 'skies' }))('kWhM2');
  const swings = await run({ task: 'swings', ...dullAndBright(skies) });
  const indices = await run({ task: 'indices' });
  return tellMatters(scenario, question, swings, indices);
}

type Column = (name: string) => Float64Array;

/** Runs one task after another, telling progress over all of them. */
function taskRunner(
  scenario: Scenario,
  question: MattersQuestion,
  ask: AskDraws,
): (task: MattersTask) => Promise<Column> {
  const { alternative, strategy, seed, draws, onProgress } = question;
  const per = runsPerDraw(inputsOf(scenario, alternative).length);
  const runs = runsToDo(scenario, question);
  let before = 0;
  return async (task) => {
    const job: MattersJob = { job: 'matters', scenario, seed, alternative, strategy, ...task };
    const { columns } = await ask(job, draws, (done) => onProgress?.(before + done * per[task.task], runs));
    before += draws * per[task.task];
    return (name) => columns[name]!;
  };
}

function tellMatters(
  scenario: Scenario,
  question: MattersQuestion,
  swings: Column,
  indices: Column,
): Matters {
  const { seed, alternative } = question;
  const { horizonDays } = scenario.outage;
  const inputs = inputsOf(scenario, alternative);
  const [a, b] = [indices('a'), indices('b')];
  const rows = { a, b, mixed: inputs.map(({ id }) => indices(`ab:${id}`)) };
  const sobol = sobolEstimates(rows, streamsOf(seed, 0)('matters/indices'));
  const { middle, perInput } = swingsOf(swings, inputs, horizonDays, seed);
  const told = inputs.map(({ id, title, isValue, ends: { low, high } }, i): InputMatters => {
    const [firstOrder, total] = [sobol.first[i]!, sobol.total[i]!];
    return { id, title, isValue, low, high, ...perInput[i]!, firstOrder, total };
  });
  return {
    ...headOf(scenario, question),
    middle,
    meanDays: sobol.mean / MINUTES_PER_DAY,
    sdDays: Math.sqrt(sobol.variance) / MINUTES_PER_DAY,
    hiddenFraction: shareHidden([a, b], horizonMinutes(horizonDays)),
    togetherFraction: leftOver(sobol),
    inputs: told.sort((x, y) => (y.total.value ?? 0) - (x.total.value ?? 0)),
  };
}

/** The draws with the dullest and with the brightest fifth of skies, each in order of draw. */
function dullAndBright(skies: Float64Array): { dull: number[]; bright: number[] } {
  const order = [...skies.keys()].sort((i, j) => skies[i]! - skies[j]! || i - j);
  const count = Math.max(1, Math.round(skies.length * SKY_SHARE));
  const inOrder = (draws: number[]) => draws.sort((i, j) => i - j);
  return { dull: inOrder(order.slice(0, count)), bright: inOrder(order.slice(-count)) };
}

function headOf(scenario: Scenario, { alternative, strategy, seed, draws }: MattersQuestion) {
  const chosen = scenario.alternatives[alternative]!;
  const plan = chosen.household.strategies[strategy]!;
  return {
    provenance: adviceProvenance(scenario, { seed, draws }),
    horizonDays: scenario.outage.horizonDays,
    alternativeId: chosen.id,
    alternativeTitle: chosen.title,
    strategyId: plan.id,
    strategyTitle: plan.title,
  };
}

function shareHidden(samples: readonly Float64Array[], most: number): number {
  const all = samples.flatMap((sample) => Array.from(sample));
  return all.filter((minutes) => minutes >= most).length / all.length;
}

function leftOver({ first }: SobolEstimates): number | null {
  if (first.some(({ value }) => value === null)) return null;
  return 1 - first.reduce((sum, { value }) => sum + value!, 0);
}
