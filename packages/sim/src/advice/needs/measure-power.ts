/** Minutes wanted and not had: medical devices, light, talk. MODEL.md §19.5. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, type NeedOutcome } from './need-tally.ts';
import type { Sight } from './watch-run.ts';

export interface WatchedCircuit {
  /** Position among the circuits; of its thermostats among the draw's. */
  readonly circuit: number;
  readonly thermostats: readonly number[];
  /** Wanted minutes in a row without power that it bears. */
  readonly graceMinutes: number;
}

/** As badly served as the worst of its circuits. Time in which nothing is wanted does not count and ends no gap; power does. */
export function measurePower(circuits: readonly WatchedCircuit[]): Measure {
  const outcome = freshOutcome();
  const gaps = new Float64Array(circuits.length);
  return {
    outcome,
    look(sight) {
      let worst = 0;
      for (let k = 0; k < circuits.length; k++) {
        const watched = circuits[k]!;
        const unmet = unmetShare(sight, watched);
        if (unmet > worst) worst = unmet;
        if (sight.poweredShare(watched.circuit) > 0) {
          const since = Math.min(unmet, sight.withoutShare(watched.circuit));
          noteGap(outcome, sight, gaps[k]! + (unmet - since), watched); // which power ended
          gaps[k] = since;
        } else gaps[k] = gaps[k]! + unmet;
        noteGap(outcome, sight, gaps[k]!, watched);
      }
      outcome.minutes += worst;
    },
  };
}

/** A gap has come to `minutes` in the minute seen. */
function noteGap(
  outcome: NeedOutcome,
  { minute }: Sight,
  minutes: number,
  { graceMinutes }: WatchedCircuit,
): void {
  if (minutes > outcome.longestMinutes) outcome.longestMinutes = minutes;
  noteFailure(outcome, minute, minutes, graceMinutes);
}

/** Share of the minute in which the circuit wanted power and had none. */
function unmetShare(sight: Sight, { circuit, thermostats }: WatchedCircuit): number {
  let unmet =
    sight.run.draw.usage.circuits[circuit]!.demandW[sight.minute]! > 0 ? 1 - sight.poweredShare(circuit) : 0;
  for (let k = 0; k < thermostats.length; k++)
    unmet = Math.max(unmet, sight.wantedShare(thermostats[k]!) - sight.ranShare(thermostats[k]!));
  return unmet;
}
