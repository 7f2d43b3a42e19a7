/** Warmth and coolth: how long and how far a room is past its limit. MODEL.md §19.3. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, tallyMinute } from './need-tally.ts';
import type { Sight } from './watch-run.ts';

export interface RoomLimitPlan {
  /** 1: must not be warmer than the limit; -1: must not be colder. */
  readonly sign: 1 | -1;
  readonly limitC: number;
  readonly borneMinutes: number;
  /** The room's temperature at the end of each minute, asked for once a minute in order. */
  readonly temperature: (sight: Sight) => number;
}

export function measureRoom({ sign, limitC, borneMinutes, temperature }: RoomLimitPlan): Measure {
  const outcome = { ...freshOutcome(), depth: 0 };
  let inARow = 0;
  return {
    outcome,
    look(sight) {
      const roomC = temperature(sight);
      const beyondC = sign * (roomC - limitC);
      if (Number.isNaN(outcome.extreme) || sign * (roomC - outcome.extreme) > 0) outcome.extreme = roomC;
      if (beyondC > 0) outcome.depth += beyondC / 60;
      inARow = tallyMinute(outcome, inARow, beyondC > 0 ? 1 : 0);
      if (inARow > 0) noteFailure(outcome, sight.minute, inARow, borneMinutes);
    },
  };
}
