/**
 * Work on a range of draws: described by plain data, so that a thread, a page's worker or this thread can be handed it;
 * run in pieces, so that progress can be told; the same rows however it is cut.
 */
import type { Scenario } from '../scenario/scenario.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { joinRows, runShard } from '../trials/shard.ts';
import { prepareStudy, type StudyOptions } from '../trials/study.ts';
import { openMattersJob, type MattersJob } from './matters/matters-job.ts';
import { openNeedsJob, type NeedsJob } from './needs/needs-job.ts';

/** The study itself, every alternative and strategy. */
export interface StudyJob extends StudyOptions {
  readonly job: 'study';
  readonly scenario: Scenario;
}

/** Work on draws as plain data: a study, what matters, or needs. */
export type DrawJob = StudyJob | MattersJob | NeedsJob;

/** Rows of draws `from` to `to - 1`. */
export type RunDraws = (from: number, to: number) => OutcomeRows;

/** Makes a job ready: milliseconds, no draws yet. */
export function openJob(job: DrawJob): RunDraws {
  switch (job.job) {
    case 'study':
      return openStudyJob(job);
    case 'matters':
      return openMattersJob(job);
    case 'needs':
      return openNeedsJob(job);
  }
}

function openStudyJob({ scenario, ...options }: StudyJob): RunDraws {
  const study = prepareStudy(scenario, options);
  return (from, to) => runShard(study, from, to);
}

/**
 * Runs draws 0 to `draws - 1` of a job, wherever its giver likes, and resolves to their rows in order.
 * @param onDone told how many draws are done, now and then
 */
export type AskDraws = (job: DrawJob, draws: number, onDone?: (done: number) => void) => Promise<OutcomeRows>;

const DRAWS_AT_ONCE = 5;

/** In this thread, a few draws at a time; others have their turn in between. */
export const askDrawsHere: AskDraws = async (job, draws, onDone) => {
  const run = openJob(job);
  const shards: OutcomeRows[] = [];
  for (let from = 0; from < draws; from += DRAWS_AT_ONCE) {
    const to = Math.min(draws, from + DRAWS_AT_ONCE);
    shards.push(run(from, to));
    onDone?.(to);
    await new Promise((resolve) => setTimeout(resolve));
  }
  return joinRows(shards);
};
