/** Steps a prepared draw minute by minute and lets a test look at every one of them. */
import { prepareStudy } from '../../packages/sim/src/index.ts';
import type { Scenario, Study } from '../../packages/sim/src/index.ts';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import { advance } from '../../packages/sim/src/step/advance.ts';
import { startRun, type Run } from '../../packages/sim/src/step/run.ts';
import { workspaceOf } from '../../packages/sim/src/trials/shard.ts';
import { fillDraw } from '../../packages/sim/src/trials/workspace.ts';

export const SEED = 'invariants';

/** What fast-check is told everywhere: the same households every time. */
export const REPEATABLE = { seed: 20_260_115, endOnFailure: true } as const;

/** Every strategy's run of one draw, at its first minute. */
export function startRuns(scenario: Scenario, index = 0): { readonly study: Study; readonly runs: Run[] } {
  const study = prepareStudy(scenario, { seed: SEED });
  const work = workspaceOf(study);
  fillDraw(study, work, streamsOf(SEED, index));
  const { household } = study.compiled[0]!;
  return { study, runs: household.strategies.map((plan) => startRun(household, work.draws[0]!, plan)) };
}

/** Calls `look` at the end of every minute of every strategy's run; returns the minutes looked at. */
export function everyMinute(scenario: Scenario, look: (run: Run, minute: number) => void): number {
  const { study, runs } = startRuns(scenario);
  for (const run of runs) {
    for (let m = 0; m < study.minutes; m++) {
      advance(run, m + 1);
      look(run, m);
    }
  }
  return study.minutes * runs.length;
}
