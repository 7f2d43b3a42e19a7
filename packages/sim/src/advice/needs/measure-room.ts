/** Warmth and coolth: how long and how far a room is past its limit. MODEL.md §19.3. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, tallyMinute } from './need-tally.ts';
import type { FillRoomC } from './room-temperature.ts';
import { MOST_AT_ONCE } from './watch-run.ts';

export interface RoomLimitPlan {
  /** 1: must not be warmer than the limit; -1: must not be colder. */
  readonly sign: 1 | -1;
  readonly limitC: number;
  readonly borneMinutes: number;
  /** Fills in the room's temperature at the end of each minute seen: asked for once, in order. */
  readonly fillRoomC: FillRoomC;
}

export function measureRoom({ sign, limitC, borneMinutes, fillRoomC }: RoomLimitPlan): Measure {
  const outcome = { ...freshOutcome(), depth: 0 };
  const roomC = new Float64Array(MOST_AT_ONCE);
  let inARow = 0;
  return {
    outcome,
    look(sight) {
      fillRoomC(sight, roomC);
      let worstC = roomC[0]!;
      for (let m = 1; m < sight.count; m++) if (sign * (roomC[m]! - worstC) > 0) worstC = roomC[m]!;
      if (!(sign * (worstC - outcome.extreme) <= 0)) outcome.extreme = worstC; // it has no number at first
      if (sign * (worstC - limitC) <= 0) {
        inARow = 0;
        return;
      }
      let row = inARow;
      for (let m = 0; m < sight.count; m++) {
        const beyondC = sign * (roomC[m]! - limitC);
        if (beyondC > 0) outcome.depth += beyondC / 60;
        row = tallyMinute(outcome, row, beyondC > 0 ? 1 : 0);
        if (row > 0) noteFailure(outcome, sight.minute + m, row, borneMinutes);
      }
      inARow = row;
    },
  };
}
