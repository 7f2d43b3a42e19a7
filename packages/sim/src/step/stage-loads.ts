/**
 * What a unit must carry in each minute, for one set of groups that hang on it.
 *
 * A set is met again and again, by several strategies and alternatives; its minutes are added up once, a day at a
 * time, when first needed.
 */
import type { CircuitGroup } from './household.ts';

const CHUNK_MINUTES = 1440;
const HOUR = 60;

/** One unit's load for one set of groups. Valid for a chunk once `readyAt` was asked for it. */
export interface UnitLoad {
  /** Watts, and largest extra watts of a start, one value per minute. */
  readonly loadW: Float32Array;
  readonly startExtraW: Float32Array;
  /** The same by hour of the outage, as views. */
  readonly loadByHour: readonly Float32Array[];
  readonly startExtraByHour: readonly Float32Array[];
  /** Most watts of each hour, and most with a start. */
  readonly peakW: Float64Array;
  readonly peakStartW: Float64Array;
  readonly ready: Uint8Array;
  /** Per group, share of its watts that this unit carries: 0, 0.5 or 1. */
  shares: Float64Array;
}

function createUnitLoad(minutes: number): UnitLoad {
  const hours = Math.ceil(minutes / HOUR);
  const loadW = new Float32Array(minutes);
  const startExtraW = new Float32Array(minutes);
  const byHour = (values: Float32Array) =>
    Array.from({ length: hours }, (_, h) => values.subarray(h * HOUR, (h + 1) * HOUR));
  return {
    loadW,
    startExtraW,
    loadByHour: byHour(loadW),
    startExtraByHour: byHour(startExtraW),
    peakW: new Float64Array(hours),
    peakStartW: new Float64Array(hours),
    ready: new Uint8Array(Math.ceil(minutes / CHUNK_MINUTES)),
    shares: new Float64Array(0),
  };
}

export class StageLoads {
  private readonly known = new Map<string, UnitLoad>();
  private readonly spare: UnitLoad[] = [];

  constructor(
    private readonly groups: readonly CircuitGroup[],
    private readonly groupW: readonly Float32Array[],
    private readonly groupExtraW: readonly (Float32Array | undefined)[],
    private readonly minutes: number,
  ) {}

  /** Makes ready for another draw; keeps the buffers. */
  forget(): void {
    this.spare.push(...this.known.values());
    this.known.clear();
  }

  /** @param shares per group, share of its watts that the unit carries: 0, 0.5 or 1 */
  unitLoad(shares: Float64Array): UnitLoad {
    const key = keyOf(shares);
    let load = this.known.get(key);
    if (load === undefined) {
      load = this.spare.pop() ?? createUnitLoad(this.minutes);
      load.shares = shares.slice();
      load.ready.fill(0);
      this.known.set(key, load);
    }
    return load;
  }

  /** Sees to it that the chunk that holds `minute` is added up. */
  readyAt(load: UnitLoad, minute: number): void {
    const chunk = Math.floor(minute / CHUNK_MINUTES);
    if (load.ready[chunk] === 1) return;
    load.ready[chunk] = 1;
    const from = chunk * CHUNK_MINUTES;
    const to = Math.min(from + CHUNK_MINUTES, this.minutes);
    load.loadW.fill(0, from, to);
    load.startExtraW.fill(0, from, to);
    for (let g = 0; g < this.groups.length; g++) {
      const share = load.shares[g]!;
      if (share === 0) continue;
      addShare(load.loadW, this.groupW[g]!, share, from, to);
      const extra = this.groupExtraW[g];
      if (extra !== undefined) keepLargerShare(load.startExtraW, extra, share, from, to);
    }
    notePeaks(load, from, to);
  }
}

/** Shares are 0, 0.5 or 1: their doubles, as digits to the base 3, make a number of up to 30 groups each. */
function keyOf(shares: Float64Array): string {
  let key = '';
  for (let g = 0; g < shares.length; g += 30) {
    let digits = 0;
    for (let k = g; k < Math.min(g + 30, shares.length); k++) digits = digits * 3 + shares[k]! * 2;
    key += `${digits},`;
  }
  return key;
}

function addShare(sum: Float32Array, watts: Float32Array, share: number, from: number, to: number): void {
  for (let m = from; m < to; m++) sum[m] = sum[m]! + share * watts[m]!;
}

function keepLargerShare(
  most: Float32Array,
  extra: Float32Array,
  share: number,
  from: number,
  to: number,
): void {
  for (let m = from; m < to; m++) {
    const w = share * extra[m]!;
    if (w > most[m]!) most[m] = w;
  }
}

function notePeaks({ loadW, startExtraW, peakW, peakStartW }: UnitLoad, from: number, to: number): void {
  for (let h = Math.floor(from / HOUR); h * HOUR < to; h++) {
    let peak = 0;
    let peakStart = 0;
    const end = Math.min(to, (h + 1) * HOUR);
    for (let m = h * HOUR; m < end; m++) {
      const w = loadW[m]!;
      if (w > peak) peak = w;
      if (w + startExtraW[m]! > peakStart) peakStart = w + startExtraW[m]!;
    }
    peakW[h] = peak;
    peakStartW[h] = peakStart;
  }
}
