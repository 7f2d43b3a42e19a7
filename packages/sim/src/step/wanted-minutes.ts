/** How many minutes a watched circuit has wanted anything, thermostats aside: counted by the hour, in the hour by its watts. */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import type { CircuitWant, UsageDraw } from '../usage/usage-draw.ts';

export interface WantedMinutes {
  readonly usage: UsageDraw;
  /** Per watched circuit, minutes wanted before each hour (length hours + 1); counted when first asked for. */
  readonly wantedBefore: readonly (Uint32Array | undefined)[];
  /** 1 once a circuit's are counted in this draw: few runs need them. */
  readonly wantedReady: Uint8Array;
}

/** Minutes wanted from the outage's start to `time`, which may fall inside a minute. */
export function wantedUntil(wants: WantedMinutes, circuit: number, time: number): number {
  const before = wantedBeforeOf(wants, circuit);
  const { demandW } = wants.usage.circuits[circuit]!;
  const minute = Math.floor(time);
  if (minute >= demandW.length) return before[before.length - 1]!;
  const hour = Math.floor(minute / MINUTES_PER_HOUR);
  const begins = hour * MINUTES_PER_HOUR;
  let wanted = before[hour]!;
  const inHour = before[hour + 1]! - wanted;
  if (inHour === 0) return wanted;
  if (inHour === MINUTES_PER_HOUR) return wanted + (time - begins);
  for (let m = begins; m < minute; m++) if (demandW[m]! > 0) wanted++;
  return demandW[minute]! > 0 ? wanted + (time - minute) : wanted;
}

/** First moment from `from` on at which more than `minutes` were wanted since then; it is known to exist. */
export function momentBeyond(wants: WantedMinutes, circuit: number, from: number, minutes: number): number {
  const before = wantedBeforeOf(wants, circuit);
  const { demandW } = wants.usage.circuits[circuit]!;
  const target = wantedUntil(wants, circuit, from) + minutes;
  let hour = Math.floor(from / MINUTES_PER_HOUR);
  while (before[hour + 1]! <= target) hour++;
  let wanted = before[hour]!;
  let m = hour * MINUTES_PER_HOUR;
  for (; ; m++) {
    if (demandW[m] === 0) continue;
    if (wanted + 1 > target) break;
    wanted++;
  }
  return Math.max(from, m + (target - wanted));
}

function wantedBeforeOf({ usage, wantedBefore, wantedReady }: WantedMinutes, circuit: number): Uint32Array {
  const before = wantedBefore[circuit]!;
  if (wantedReady[circuit] === 0) {
    countUp(usage.circuits[circuit]!, before);
    wantedReady[circuit] = 1;
  }
  return before;
}

function countUp({ demandW, leastW, mostW }: CircuitWant, before: Uint32Array): void {
  let minutes = 0;
  for (let h = 0; h < leastW.length; h++) {
    const from = h * MINUTES_PER_HOUR;
    const end = Math.min(demandW.length, from + MINUTES_PER_HOUR);
    if (leastW[h]! > 0) minutes += end - from;
    else if (mostW[h]! > 0) for (let m = from; m < end; m++) minutes += demandW[m]! > 0 ? 1 : 0;
    before[h + 1] = minutes;
  }
}
