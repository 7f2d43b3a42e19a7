/** Food kept cold: how long and how far above the limit. MODEL.md §19.1. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, tallyMinute } from './need-tally.ts';

export interface ColdPlan {
  /** Positions of the refrigerators and freezers among the draw's thermostats. */
  readonly stores: readonly number[];
  readonly limitC: number;
  /** Minutes above the limit, added up over the outage, after which what is in a store is thrown away. */
  readonly borneMinutes: number;
}

/** As bad as the worst of its stores; hours above the limit add up, since food does not recover. */
export function measureCold({ stores, limitC, borneMinutes }: ColdPlan): Measure {
  const outcome = { ...freshOutcome(), depth: 0, extreme: -Infinity };
  const above = new Float64Array(stores.length);
  const degreeHours = new Float64Array(stores.length);
  const storesC: Float64Array[] = [];
  let inARow = 0;
  return {
    outcome,
    look({ minute, count, temperaturesC }) {
      let warmestC = -Infinity;
      for (let k = 0; k < stores.length; k++) {
        const storeC = temperaturesC(stores[k]!);
        storesC[k] = storeC;
        for (let m = 0; m < count; m++) if (storeC[m]! > warmestC) warmestC = storeC[m]!;
      }
      if (warmestC > outcome.extreme) outcome.extreme = warmestC;
      if (warmestC <= limitC) {
        inARow = 0;
        return;
      }
      let row = inARow;
      for (let m = 0; m < count; m++) {
        let warm = 0;
        for (let k = 0; k < stores.length; k++) {
          const storeC = storesC[k]![m]!;
          if (storeC <= limitC) continue;
          warm = 1;
          above[k]! += 1;
          degreeHours[k]! += (storeC - limitC) / 60;
          if (degreeHours[k]! > outcome.depth) outcome.depth = degreeHours[k]!;
          noteFailure(outcome, minute + m, above[k]!, borneMinutes);
        }
        row = tallyMinute(outcome, row, warm);
      }
      inARow = row;
    },
  };
}
