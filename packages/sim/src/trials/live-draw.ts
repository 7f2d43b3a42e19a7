/** One draw lived through under one strategy of one alternative, its streams given by the caller. */
import type { Streams } from '../chance/streams.ts';
import { advance } from '../step/advance.ts';
import { closeAll } from '../step/apply-power.ts';
import { liveToEnd } from '../step/live-to-end.ts';
import { releaseRun, startRun, type Run } from '../step/run.ts';
import { workspaceOf } from './shard.ts';
import type { Study } from './study.ts';
import { fillDraw, fillSupplies } from './workspace.ts';

/** Positions in the study's lists. */
export interface RunChoice {
  readonly alternative: number;
  readonly strategy: number;
}

/**
 * The run at its horizon, closed. It reads the buffers of the study's workspace, which the next draw overwrites.
 * @param buffersOf the study whose buffers are used: itself, or the one it was varied from (`varyStudy`)
 */
export function liveDraw(study: Study, streams: Streams, choice: RunChoice, buffersOf: Study = study): Run {
  const run = startDraw(study, streams, choice, buffersOf, fillDraw);
  advance(run, study.minutes);
  closeAll(run); // a stretch without power is noted at its end
  return run;
}

/**
 * Minutes until tier 1 went without, cut at the horizon; the arguments are those of `liveDraw`.
 * @param world kept: weather, sun and habits are those of the draw before, which these streams would only repeat
 */
export function drawnRuntimeMinutes(
  study: Study,
  streams: Streams,
  choice: RunChoice,
  buffersOf: Study,
  world: 'drawn' | 'kept',
): number {
  const fill = world === 'drawn' ? fillDraw : fillSupplies;
  const run = startDraw(study, streams, choice, buffersOf, fill);
  liveToEnd(run);
  releaseRun(run);
  return Math.min(run.end.minute, run.draw.minutes);
}

function startDraw(
  study: Study,
  streams: Streams,
  { alternative, strategy }: RunChoice,
  buffersOf: Study,
  fill: typeof fillDraw,
): Run {
  const work = workspaceOf(buffersOf);
  fill(study, work, streams);
  const { household } = study.compiled[alternative]!;
  return startRun(household, work.draws[alternative]!, household.strategies[strategy]!);
}
