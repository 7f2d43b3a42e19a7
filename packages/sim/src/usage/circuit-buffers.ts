/** The rows of watts that appliances of one circuit add themselves to. */
import type { LocalDays } from './local-days.ts';
import { roundW } from './round-w.ts';
import type { CircuitWant } from './usage-draw.ts';

/**
 * Rows for `minutes` minutes.
 *
 * @param wants whether anything but thermostats hangs on the circuit.
 * @param starts whether anything on it asks for starting watts.
 */
export function createCircuit(minutes: number, wants: boolean, starts: boolean): CircuitWant {
  const hours = Math.ceil(minutes / 60);
  return {
    wants,
    demandW: new Float32Array(minutes),
    startExtraW: starts ? new Float32Array(minutes) : undefined,
    starts: { count: 0, at: new Int32Array(starts ? minutes : 0) },
    hourExtraW: starts ? new Float32Array(hours) : undefined,
    busyHours: new Uint8Array(hours),
    hourWmin: new Float64Array(hours),
    leastW: new Float32Array(hours),
    mostW: new Float32Array(hours),
  };
}

/** Takes away the starts of the draw before; watts are laid down anew. */
export function clearStarts({ startExtraW, starts, hourExtraW, busyHours }: CircuitWant): void {
  if (startExtraW !== undefined) for (let i = 0; i < starts.count; i++) startExtraW[starts.at[i]!] = 0;
  starts.count = 0;
  hourExtraW?.fill(0);
  busyHours.fill(0);
}

/** The watts change at the start of `minute`: told to the hour it lies in, unless they change with the hour. */
export function noteChange({ busyHours }: CircuitWant, minute: number): void {
  if (minute % 60 !== 0) busyHours[(minute / 60) | 0] = 1; // past the end falls away
}

/**
 * Lays each local day's watts down over the whole outage.
 *
 * @param dayW one value per local day.
 * @param laidW what lies there already over all of it, NaN for nothing of use.
 * @returns what then lies over all of it, NaN where days differ.
 */
export function fillDays(circuit: CircuitWant, days: LocalDays, dayW: Float64Array, laidW: number): number {
  let from = 0;
  let watts = roundW(dayW[0]!);
  for (let s = 1; s < days.stretchCount; s++) {
    const next = roundW(dayW[days.stretchDay[s]!]!);
    if (next === watts) continue;
    const to = days.stretchAt[s]!;
    circuit.demandW.fill(watts, from, to);
    noteChange(circuit, to);
    from = to;
    watts = next;
  }
  if (from > 0 || watts !== laidW) circuit.demandW.fill(watts, from);
  return from > 0 ? NaN : watts;
}

/**
 * Adds `watts` to whole minutes from `from` up to, not including, `to`, both within the outage.
 *
 * @param flat whether all of them have the same watts now, which takes less time.
 */
export function addMinutes(
  circuit: CircuitWant,
  from: number,
  to: number,
  watts: number,
  flat: boolean,
): void {
  if (from >= to) return;
  const { demandW } = circuit;
  if (flat) demandW.fill(demandW[from]! + watts, from, to);
  else for (let m = from; m < to; m++) demandW[m] = demandW[m]! + watts;
  noteChange(circuit, from);
  noteChange(circuit, to);
}

/**
 * Adds `watts` from minute `from` up to `to`, each minute getting its mean: the first and last by the fraction
 * covered. Parts before minute 0 and past the end fall away.
 *
 * @param watts kept to a 64th (`roundW`), as are the parts of minutes.
 */
export function addRun(circuit: CircuitWant, from: number, to: number, watts: number): void {
  const { demandW, busyHours } = circuit;
  const begin = Math.max(from, 0);
  const end = Math.min(to, demandW.length);
  if (!(begin < end)) return;
  const first = Math.floor(begin);
  const last = Math.floor(end);
  busyHours[(first / 60) | 0] = 1;
  busyHours[(last / 60) | 0] = 1;
  if (first === last) {
    demandW[first]! += roundW(watts * (end - begin));
    return;
  }
  demandW[first]! += roundW(watts * (first + 1 - begin));
  for (let m = first + 1; m < last; m++) demandW[m]! += watts;
  if (last < demandW.length) demandW[last]! += roundW(watts * (end - last));
}

/** Notes a start at `at` (minutes, fractions allowed); one before the outage or past its horizon leaves no mark. */
export function addStart(
  { startExtraW, starts, hourExtraW, busyHours }: CircuitWant,
  at: number,
  extraW: number,
): void {
  if (startExtraW === undefined || hourExtraW === undefined || at < 0) return;
  const minute = Math.floor(at);
  if (minute >= startExtraW.length || startExtraW[minute]! >= extraW) return;
  if (startExtraW[minute] === 0) starts.at[starts.count++] = minute;
  startExtraW[minute] = extraW;
  const hour = (minute / 60) | 0;
  if (extraW > hourExtraW[hour]!) hourExtraW[hour] = extraW;
  busyHours[hour] = 1;
}

/** Once all its watts are there: what they come to hour by hour. Sums are exact: watts are kept to a 64th. */
export function sumUpHours({ demandW, busyHours, hourWmin, leastW, mostW }: CircuitWant): void {
  for (let h = 0; h < busyHours.length; h++) {
    const from = 60 * h;
    const end = Math.min(demandW.length, from + 60);
    const firstW = demandW[from]!;
    let least = firstW;
    let most = firstW;
    let wmin = firstW * (end - from);
    if (busyHours[h] !== 0) {
      // mostly an hour returns to the watts it began with: only what differs from them is added
      for (let m = from + 1; m < end; m++) {
        const w = demandW[m]!;
        if (w === firstW) continue;
        wmin += w - firstW;
        if (w < least) least = w;
        else if (w > most) most = w;
      }
    }
    hourWmin[h] = wmin;
    leastW[h] = least;
    mostW[h] = most;
  }
}
