/** Minutes wanted and not had: medical devices, light, talk. MODEL.md §19.5. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure } from './need-tally.ts';
import type { Sight } from './watch-run.ts';

export interface WatchedCircuit {
  /** Position among the circuits; of its thermostats among the draw's. */
  readonly circuit: number;
  readonly thermostats: readonly number[];
  /** Wanted minutes in a row without power that it bears. */
  readonly graceMinutes: number;
}

/** As badly served as the worst of its circuits. Minutes in which nothing is wanted do not count and end no gap. */
export function measurePower(circuits: readonly WatchedCircuit[]): Measure {
  const outcome = freshOutcome();
  const gaps = new Float64Array(circuits.length);
  return {
    outcome,
    look(sight) {
      let worst = 0;
      for (let k = 0; k < circuits.length; k++) {
        const { circuit, graceMinutes } = circuits[k]!;
        const powered = sight.poweredShare(circuit);
        if (powered >= 1) {
          gaps[k] = 0;
          continue;
        }
        const unmet = unmetShare(sight, circuits[k]!);
        if (unmet <= 0) continue;
        // power for a part of the minute ended the gap that was open, or the gap begins with it
        gaps[k] = gaps[k]! + unmet;
        if (unmet > worst) worst = unmet;
        if (gaps[k]! > outcome.longestMinutes) outcome.longestMinutes = gaps[k]!;
        noteFailure(outcome, sight.minute, gaps[k]!, graceMinutes);
      }
      outcome.minutes += worst;
    },
  };
}

/** Share of the minute in which the circuit wanted power and had none. */
function unmetShare(sight: Sight, { circuit, thermostats }: WatchedCircuit): number {
  let unmet =
    sight.run.draw.usage.circuits[circuit]!.demandW[sight.minute]! > 0 ? 1 - sight.poweredShare(circuit) : 0;
  for (let k = 0; k < thermostats.length; k++)
    unmet = Math.max(unmet, sight.wantedShare(thermostats[k]!) - sight.ranShare(thermostats[k]!));
  return unmet;
}
