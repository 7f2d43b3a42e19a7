/** The runs behind the question of needs: the study's own draws, watched minute by minute. MODEL.md §19. */
import { streamsOf } from '../../chance/streams.ts';
import { needsOf } from '../../scenario/needs-of.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { NeedSpec } from '../../scenario/schema-needs.ts';
import { releaseRun, startRun } from '../../step/run.ts';
import type { OutcomeRows } from '../../trials/outcome-rows.ts';
import { workspaceOf } from '../../trials/shard.ts';
import { prepareStudy, type Study } from '../../trials/study.ts';
import { fillDraw } from '../../trials/workspace.ts';
import { NEED_COLUMNS } from './need-tally.ts';
import { measureOf } from './plan-needs.ts';
import { watchRun } from './watch-run.ts';

/** Plain data: goes to any thread. */
export interface NeedsJob {
  readonly job: 'needs';
  readonly scenario: Scenario;
  readonly seed: string;
}

/** The needs of a scenario; those of an alternative's own circuits come after the first one's. */
export function scenarioNeeds({ needs, alternatives }: Scenario): NeedSpec[] {
  return needsOf(
    needs,
    alternatives.flatMap((a) => a.household.circuits),
  );
}

const COLUMNS = ['draw', 'alternative', 'strategy', 'need', ...NEED_COLUMNS];

/** Rows by draw, alternative, strategy and need (positions), with the columns of `NEED_COLUMNS`. */
export function openNeedsJob({ scenario, seed }: NeedsJob): (from: number, to: number) => OutcomeRows {
  const needs = scenarioNeeds(scenario);
  const study = prepareStudy(scenario, { seed });
  const perDraw = study.alternatives.length * study.strategies.length * needs.length;
  return (from, to) => {
    const length = Math.max(0, to - from) * perDraw;
    const columns = Object.fromEntries(COLUMNS.map((name) => [name, new Float64Array(length)]));
    let row = 0;
    for (let draw = from; draw < to; draw++)
      for (const outcome of outcomesOf(study, needs, draw)) {
        for (const [name, value] of Object.entries({ draw, ...outcome })) columns[name]![row] = value;
        row++;
      }
    return { length, columns };
  };
}

/** One draw lived through under every strategy of every alternative. */
function outcomesOf(study: Study, needs: readonly NeedSpec[], draw: number) {
  const { scenario, seed, minutes, compiled } = study;
  const work = workspaceOf(study);
  fillDraw(study, work, streamsOf(seed, draw));
  return compiled.flatMap(({ household }, alternative) =>
    household.strategies.flatMap((plan, strategy) => {
      const run = startRun(household, work.draws[alternative]!, plan);
      const spec = scenario.alternatives[alternative]!.household;
      const measures = needs.map((need) => measureOf(need, spec, scenario, run));
      watchRun(run, minutes, (sight) => {
        for (let k = 0; k < measures.length; k++) measures[k]!.look(sight);
      });
      releaseRun(run);
      return measures.map(({ outcome }, need) => ({ alternative, strategy, need, ...outcome }));
    }),
  );
}
