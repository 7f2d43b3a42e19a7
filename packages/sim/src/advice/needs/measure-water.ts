/** Water: what is in store, what the pump raises, what the household needs. MODEL.md §19.2. */
import { MINUTES_PER_HOUR } from '../../power/hour-figures.ts';
import type { CircuitWant } from '../../usage/usage-draw.ts';
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, tallyMinute } from './need-tally.ts';

export interface Pump {
  /** Position of its circuit. */
  readonly circuit: number;
  readonly runningW: number;
  /** What else on the circuit can ask for at most. */
  readonly othersW: number;
}

export interface WaterPlan {
  /** None: only what is in store. */
  readonly pumps: readonly Pump[];
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
  return {
    outcome,
    look({ run, minute, count, poweredShare }) {
      const { circuits } = run.draw.usage;
      let there = stock; // locals: what a function keeps for the next call is slow to change
      let row = inARow;
      let least = outcome.extreme;
      for (let m = minute; m < minute + count; m++) {
        let raised = 0;
        for (let k = 0; k < pumps.length; k++) {
          const { circuit, runningW, othersW } = pumps[k]!;
          const watts = circuits[circuit]!.demandW[m]!;
          if (watts <= 0) continue;
          const pumpW = othersW > 0 ? watts - restW(circuits[circuit]!, m, pumps[k]!) : watts;
          raised += (pumpLitresPerMinute * poweredShare(circuit) * pumpW) / runningW;
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

/**
 * What else asks for watts in the minute: the least of its hour, in which a pump rests; of one that runs all through the
 * hour, what the others' nameplates say.
 */
function restW({ leastW }: CircuitWant, minute: number, { runningW, othersW }: Pump): number {
  const least = leastW[Math.floor(minute / MINUTES_PER_HOUR)]!;
  return least < runningW ? least : othersW;
}
