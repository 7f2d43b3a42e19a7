/** How advice asks for studies: it says what to run, its caller where (this thread, a pool, a page's worker). */
import type { Scenario } from '../scenario/scenario.ts';
import type { OutcomeRows } from '../trials/outcome-rows.ts';
import { runShard } from '../trials/shard.ts';
import { prepareStudy, type RowsWanted, type StudyOutline } from '../trials/study.ts';

/** Which draws of a scenario advice asks for. */
export interface StudyQuestion {
  readonly seed: string;
  /** Draws 0 to draws - 1, ≥ 1. */
  readonly draws: number;
  /** Default: whole outcomes. */
  readonly rows?: RowsWanted | undefined;
}

/** The rows of a study that advice asked for, and what their positions mean. */
export interface StudyAnswer {
  readonly outline: StudyOutline;
  /** In order of draw, alternative, strategy. */
  readonly rows: OutcomeRows;
}

/** Runs a study. The same scenario and question give the same bits wherever it runs. */
export type AskStudy = (scenario: Scenario, question: StudyQuestion) => Promise<StudyAnswer>;

/** In this thread, at once. */
export const askHere: AskStudy = (scenario, { seed, draws, rows }) => {
  const study = prepareStudy(scenario, { seed, rows });
  return Promise.resolve({ outline: study, rows: runShard(study, 0, draws) });
};
