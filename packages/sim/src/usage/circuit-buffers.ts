/** The two rows of watts that appliances of one circuit add themselves to. */
import { roundW } from './round-w.ts';
import type { CircuitWant } from './usage-draw.ts';

/**
 * Adds `watts` from minute `from` up to `to`, each minute getting its mean: the first and last by the fraction
 * covered. Parts before minute 0 and past the end fall away.
 *
 * @param watts kept to a 64th (`roundW`), as are the parts of minutes.
 */
export function addRun(demandW: Float32Array, from: number, to: number, watts: number): void {
  const begin = Math.max(from, 0);
  const end = Math.min(to, demandW.length);
  if (!(begin < end)) return;
  const first = Math.floor(begin);
  const last = Math.floor(end);
  if (first === last) {
    demandW[first]! += roundW(watts * (end - begin));
    return;
  }
  demandW[first]! += roundW(watts * (first + 1 - begin));
  for (let m = first + 1; m < last; m++) demandW[m]! += watts;
  if (last < demandW.length) demandW[last]! += roundW(watts * (end - last));
}

/** Notes a start at `at` (minutes, fractions allowed); one before the outage or past its horizon leaves no mark. */
export function addStart(circuit: CircuitWant, at: number, extraW: number): void {
  const starts = circuit.startExtraW;
  if (starts === undefined || at < 0) return;
  const minute = Math.floor(at);
  if (minute < starts.length && starts[minute]! < extraW) starts[minute] = extraW;
}
