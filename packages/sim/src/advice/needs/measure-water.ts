/** Water: what is in store, what the pump raises, what the household needs. MODEL.md §19.2. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, tallyMinute } from './need-tally.ts';
import type { Sight } from './watch-run.ts';

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
    look(sight) {
      mostW ??= pumps.map((pump) => mostOf(sight.run.draw.usage.circuits[pump]!.demandW));
      let raised = 0;
      for (let k = 0; k < pumps.length; k++)
        raised += pumpLitresPerMinute * shareRun(sight, pumps[k]!, mostW[k]!);
      const there = stock + raised;
      const short = Math.max(0, litresPerMinuteNeeded - there);
      stock = Math.min(storedLitres, Math.max(0, there - litresPerMinuteNeeded));
      outcome.litresRaised += raised;
      outcome.depth += short;
      if (stock < outcome.extreme) outcome.extreme = stock;
      const unmet = short / litresPerMinuteNeeded;
      inARow = tallyMinute(outcome, inARow, unmet);
      if (unmet > 0) noteFailure(outcome, sight.minute, inARow, borneMinutes);
    },
  };
}

/** A pump that runs for a part of a minute wants that part of its watts. */
function shareRun({ run, minute, poweredShare }: Sight, pump: number, mostW: number): number {
  return mostW > 0 ? (poweredShare(pump) * run.draw.usage.circuits[pump]!.demandW[minute]!) / mostW : 0;
}

function mostOf(watts: Float32Array): number {
  let most = 0;
  for (let m = 0; m < watts.length; m++) most = Math.max(most, watts[m]!);
  return most;
}
