/** One draw under one strategy and alternative, written out minute by minute. */
import { streamsOf } from '../chance/streams.ts';
import { startRun } from '../step/run.ts';
import { traceRun, type Trace } from '../step/trace.ts';
import { assertDraw } from './draw-range.ts';
import { fillDraw } from './workspace.ts';
import { workspaceOf } from './shard.ts';
import type { Study } from './study.ts';

/** Which run to write out. */
export interface TraceChoice {
  /** Whole number ≥ 0. */
  readonly draw: number;
  /** Positions in study.alternatives and study.strategies. */
  readonly alternative: number;
  readonly strategy: number;
}

/** One draw under one alternative and strategy, minute by minute. */
export interface DrawTrace extends Trace, TraceChoice {
  readonly startEpochMinute: number;
  /** Local civil time of each minute: minutes after midnight, and days since the day the outage starts on. */
  readonly localMinuteOfDay: Uint16Array;
  readonly localDay: Uint16Array;
  readonly firstLocalDay: number;
  /** Weather of each minute. */
  readonly ghiWm2: Float32Array;
  readonly dryBulbC: Float32Array;
  /** Minutes until tier 1 went without; null when it never did. */
  readonly runtimeMinutes: number | null;
}

/**
 * Runs one draw under one alternative and strategy, and writes out every minute of it.
 *
 * @throws RangeError when the choice names no draw there can be, or no alternative or strategy of the study
 */
export function traceDraw(study: Study, choice: TraceChoice): DrawTrace {
  assertDraw(choice.draw);
  const compiled = study.compiled[choice.alternative];
  const plan = compiled?.household.strategies[choice.strategy];
  if (compiled === undefined || plan === undefined) {
    throw new RangeError(
      `no alternative ${choice.alternative} with strategy ${choice.strategy} in this study`,
    );
  }
  const work = workspaceOf(study);
  fillDraw(study, work, streamsOf(study.seed, choice.draw));
  const run = startRun(compiled.household, work.draws[choice.alternative]!, plan);
  const trace = traceRun(run, study.minutes);
  return {
    ...trace,
    ...choice,
    startEpochMinute: work.clock.startEpochMinute,
    localMinuteOfDay: work.clock.localMinuteOfDay.slice(),
    localDay: work.clock.localDay.slice(),
    firstLocalDay: work.clock.firstLocalDay,
    ghiWm2: work.weather.ghiWm2.slice(),
    dryBulbC: work.weather.dryBulbC.slice(),
    runtimeMinutes: run.end.minute === Infinity ? null : run.end.minute,
  };
}
