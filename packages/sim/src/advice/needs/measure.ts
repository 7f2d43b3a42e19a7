/** A need measured along a run. */
import type { NeedOutcome } from './need-tally.ts';
import type { Sight } from './watch-run.ts';

export interface Measure {
  /** Shown all minutes in order, some at a time. */
  readonly look: (sight: Sight) => void;
  readonly outcome: NeedOutcome;
}
