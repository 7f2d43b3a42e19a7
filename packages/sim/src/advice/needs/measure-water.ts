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
      mostW ??= pumps.map((pump) => mostOf(circuits[pump]!.demandW));
      for (let m = minute; m < minute + count; m++) {
        let raised = 0;
        for (let k = 0; k < pumps.length; k++) {
          const ran = shareRun(circuits[pumps[k]!]!.demandW[m]!, mostW[k]!);
          if (ran > 0) raised += pumpLitresPerMinute * ran * poweredShare(pumps[k]!);
        }
        there += raised;
        const short = Math.max(0, litresPerMinuteNeeded - there);
        there = Math.min(storedLitres, Math.max(0, there - litresPerMinuteNeeded));
        if (raised > 0) outcome.litresRaised += raised;
        if (there < outcome.extreme) outcome.extreme = there;
        if (short > 0) outcome.depth += short;
        const unmet = short / litresPerMinuteNeeded;
        row = tallyMinute(outcome, row, unmet);
        if (unmet > 0) noteFailure(outcome, m, row, borneMinutes);
      }
      stock = there;
      inARow = row;
    },
  };
}

/** A pump that runs for a part of a minute wants that part of its watts. */
function shareRun(watts: number, mostW: number): number {
  return mostW > 0 ? watts / mostW : 0;
}

function mostOf(watts: Float32Array): number {
  let most = 0;
  for (let m = 0; m < watts.length; m++) most = Math.max(most, watts[m]!);
  return most;
}
