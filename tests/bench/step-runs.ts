import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import type { Study } from '../../packages/sim/src/index.ts';
import { advance } from '../../packages/sim/src/step/advance.ts';
import { writeOutcome } from '../../packages/sim/src/step/outcome.ts';
import { startRun } from '../../packages/sim/src/step/run.ts';
import { fillDraw, type Workspace } from '../../packages/sim/src/trials/workspace.ts';
import { SEED } from './session.ts';

/** Steps the draw in `work` through every strategy and alternative; returns a sum that keeps the work from being skipped. */
export function stepRuns(study: Study, work: Workspace): number {
  let written = 0;
  const write = (_: string, value: number) => {
    if (value > 0) written += value;
  };
  study.compiled.forEach(({ household }, alternative) => {
    for (const plan of household.strategies) {
      const run = startRun(household, work.draws[alternative]!, plan);
      advance(run, study.minutes);
      writeOutcome(run, write);
    }
  });
  return written;
}

/** Milliseconds of the minute loop alone, on one draw made just before as a study makes it. */
export function timeLoop(study: Study, work: Workspace, draw: number): number {
  fillDraw(study, work, streamsOf(SEED, draw));
  const from = performance.now();
  stepRuns(study, work);
  return performance.now() - from;
}
