/** Minutes wanted and not had: medical devices, light, talk. MODEL.md §19.5. */
import type { Measure } from './measure.ts';
import { freshOutcome, noteFailure, type NeedOutcome } from './need-tally.ts';
import { MOST_AT_ONCE, type Sight } from './watch-run.ts';

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
  const unmetShares = circuits.map(() => new Float64Array(MOST_AT_ONCE));
  return {
    outcome,
    look(sight) {
      if (circuits.every(({ circuit }) => sight.poweredShare(circuit) === 1)) {
        gaps.fill(0);
        return;
      }
      for (let k = 0; k < circuits.length; k++) fillUnmet(sight, circuits[k]!, unmetShares[k]!);
      for (let m = 0; m < sight.count; m++) {
        let worst = 0;
        for (let k = 0; k < circuits.length; k++) {
          const watched = circuits[k]!;
          const unmet = unmetShares[k]![m]!;
          if (unmet > worst) worst = unmet;
          if (sight.poweredShare(watched.circuit) > 0) {
            const since = Math.min(unmet, sight.withoutShare(watched.circuit));
            noteGap(outcome, sight.minute + m, gaps[k]! + (unmet - since), watched); // which power ended
            gaps[k] = since;
          } else gaps[k] = gaps[k]! + unmet;
          noteGap(outcome, sight.minute + m, gaps[k]!, watched);
        }
        outcome.minutes += worst;
      }
    },
  };
}

/** A gap has come to `minutes` in that minute. */
function noteGap(
  outcome: NeedOutcome,
  minute: number,
  minutes: number,
  { graceMinutes }: WatchedCircuit,
): void {
  if (minutes > outcome.longestMinutes) outcome.longestMinutes = minutes;
  noteFailure(outcome, minute, minutes, graceMinutes);
}

/** Shares of the minutes in which the circuit wanted power and had none. */
function fillUnmet(sight: Sight, { circuit, thermostats }: WatchedCircuit, unmet: Float64Array): void {
  const { minute, count } = sight;
  const { demandW } = sight.run.draw.usage.circuits[circuit]!;
  const without = 1 - sight.poweredShare(circuit);
  for (let m = 0; m < count; m++) unmet[m] = demandW[minute + m]! > 0 ? without : 0;
  for (let k = 0; k < thermostats.length; k++) {
    const ran = sight.ranShares(thermostats[k]!);
    const wanted = sight.wantedShares(thermostats[k]!);
    for (let m = 0; m < count; m++) unmet[m] = Math.max(unmet[m]!, wanted[m]! - ran[m]!);
  }
}
