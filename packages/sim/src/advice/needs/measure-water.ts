/** Water: what is in store, what the pump raises, what the household needs. MODEL.md §19.2. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, tallyMinute } from './need-tally.ts';

export interface WaterPlan {
  /** Positions of the pumps' circuits; none: only what is in store. */
  readonly pumps: readonly number[];
  readonly litresPerMinuteNeeded: number;
  readonly storedLitres: number;
  readonly pumpLitresPerMinute: number;
  readonly borneMinutes: number;
}

/** What the pump raises meets the minute's need first, then fills what is empty of the store; the rest is used freely. */
export function measureWater(plan: WaterPlan): Measure {
  const { pumps, litresPerMinuteNeeded, storedLitres, pumpLitresPerMinute, borneMinutes } = plan;
  const outcome = { ...freshOutcome(), depth: 0, extreme: storedLitres, litresRaised: 0 };
  let stock = storedLitres;
  let inARow = 0;
  let mostW: readonly number[] | undefined;
  return {
    outcome,
    look({ run, minute, count, poweredShare }) {
      const { circuits } = run.draw.usage;
      let there = stock; // locals: what a function keeps for the next call is slow to change
      let row = inARow;
      let least = outcome.extreme;
      mostW ??= pumps.map((pump) => mostOf(circuits[pump]!.demandW));
      for (let m = minute; m < minute + count; m++) {
        let raised = 0;
        for (let k = 0; k < pumps.length; k++) {
          const watts = circuits[pumps[k]!]!.demandW[m]!; // one that runs for a part of a minute wants that part of them
          if (watts > 0) raised += (pumpLitresPerMinute * poweredShare(pumps[k]!) * watts) / mostW[k]!;
        }
        there += raised;
        if (raised > 0) outcome.litresRaised += raised;
        if (there >= litresPerMinuteNeeded) {
          there -= litresPerMinuteNeeded;
          if (there > storedLitres) there = storedLitres;
          if (there < least) least = there;
          row = 0;
          continue;
        }
        const short = litresPerMinuteNeeded - there;
        there = least = 0;
        outcome.depth += short;
        row = tallyMinute(outcome, row, short / litresPerMinuteNeeded);
        noteFailure(outcome, m, row, borneMinutes);
      }
      outcome.extreme = least;
      stock = there;
      inARow = row;
    },
  };
}

function mostOf(watts: Float32Array): number {
  let most = 0;
  for (let m = 0; m < watts.length; m++) most = Math.max(most, watts[m]!);
  return most;
}
