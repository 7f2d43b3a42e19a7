/** A need measured along a run. */
import type { NeedOutcome } from './need-tally.ts';
import type { Sight } from './watch-run.ts';

export interface Measure {
  /** Called for every minute in order. */
  readonly look: (sight: Sight) => void;
  readonly outcome: NeedOutcome;
}
