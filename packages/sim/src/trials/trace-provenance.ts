import type { Provenance } from './study-summary.ts';
import type { TraceChoice } from './trace-draw.ts';
import type { StudyOutline } from './study.ts';

/** What it takes to write one outage out again. */
export interface TraceProvenance extends Omit<Provenance, 'draws' | 'choosingDraws'> {
  /** The draw that is written out; the first is 0. */
  readonly draw: number;
  readonly alternative: string;
  readonly strategy: string;
}

/** Provenance of the trace of `choice`. */
export function traceProvenance(study: StudyOutline, choice: TraceChoice): TraceProvenance {
  return {
    scenarioHash: study.scenarioHash,
    scenarioTitle: study.scenario.title,
    seed: study.seed,
    draw: choice.draw,
    alternative: study.alternatives[choice.alternative]!.id,
    strategy: study.strategies[choice.strategy]!.id,
    version: study.version,
    weatherName: study.weatherName,
  };
}
