/**
 * What hangs on a unit minute by minute, thermostats aside: added up once per draw, hour by hour where it is needed,
 * for every run that asks for the same, with the sums that let a unit go through many minutes at once. MODEL.md §5.2.
 *
 * A *pattern* is the share of each group's watts that a unit carries. Strategies and alternatives that have the same
 * circuits on meet the same pattern, and read the same sums. Watts are multiples of a 64th, so the sums are exact.
 */
import type { GroupWants } from './group-wants.ts';

export const MINUTES_PER_HOUR = 60;
/** Running sums of an hour: one before each minute and one at its end. */
export const SUMS_PER_HOUR = MINUTES_PER_HOUR + 1;

/** Patterns kept from draw to draw; with more than these the next draw begins anew, so that memory stays bounded. */
const MOST_PATTERNS = 400;
/** Hours of sums that the pool has room for at first; it grows as needed. */
const FIRST_BLOCKS = 64;

export interface LoadPattern {
  /** Per group: 0, 0.5 (240 V) or 1. */
  readonly shares: Float64Array;
  /** The groups with any share, as bits: see `bitsOf`. */
  readonly bits: number;
  /** Per hour of the outage, the block of its sums; 0 where they are not made yet. Of the draw `ofDraw`. */
  readonly blocks: Int32Array;
  ofDraw: number;
  /** By group and twice its share: the pattern with that one share changed, once somebody asked for it. */
  readonly changed: (LoadPattern | undefined)[];
}

export interface HourLoads {
  readonly byShares: Map<string, LoadPattern>;
  /** Nothing hangs on the unit. */
  nothing: LoadPattern;
  /** Counts draws: what patterns hold of an earlier one is out of date. */
  draw: number;
  /** Blocks in use; the first is never used, so that 0 can mean none. */
  used: number;
  /** Per block, 60 minutes: watts beside the block's base, and the largest extra watts of a start. */
  watts: Float32Array;
  startExtraW: Float32Array;
  /** Per block, 61 running sums of `watts` and of their squares. */
  sumW: Float64Array;
  sumW2: Float64Array;
  /** 1 once a block's starts are filled in: few need them. */
  startsReady: Uint8Array;
  /** Per hour of the draw, the latest block made for it; per block, the one made before it for the same hour; 0 = none. */
  readonly latest: Int32Array;
  /** Per hour of the draw, the groups that ask for anything, as bits; 0 = not looked at yet. */
  readonly asking: Int32Array;
  before: Int32Array;
  /** Per block, the pattern it was made for. */
  madeFor: (LoadPattern | undefined)[];
  /**
   * Per block: watts asked for in every minute; the least and most of `watts` beside them; the most extra watts of a
   * start, whenever it is; once its starts are filled in, the most of `watts` and a start's extra in one minute.
   */
  baseW: Float64Array;
  leastW: Float64Array;
  mostW: Float64Array;
  peakExtraW: Float64Array;
  peakStartW: Float64Array;
}

/** The wants of a draw, and the sums made of them so far. */
export interface SummedWants extends GroupWants {
  readonly hourLoads: HourLoads;
}

export function createHourLoads(groups: number, hours: number): HourLoads {
  const byShares = new Map<string, LoadPattern>();
  return {
    byShares,
    nothing: patternOf(byShares, new Float64Array(groups), hours),
    draw: 0,
    used: 1,
    watts: new Float32Array(FIRST_BLOCKS * MINUTES_PER_HOUR),
    startExtraW: new Float32Array(FIRST_BLOCKS * MINUTES_PER_HOUR),
    sumW: new Float64Array(FIRST_BLOCKS * SUMS_PER_HOUR),
    sumW2: new Float64Array(FIRST_BLOCKS * SUMS_PER_HOUR),
    startsReady: new Uint8Array(FIRST_BLOCKS),
    latest: new Int32Array(hours),
    asking: new Int32Array(hours),
    before: new Int32Array(FIRST_BLOCKS),
    madeFor: [undefined],
    baseW: new Float64Array(FIRST_BLOCKS),
    leastW: new Float64Array(FIRST_BLOCKS),
    mostW: new Float64Array(FIRST_BLOCKS),
    peakExtraW: new Float64Array(FIRST_BLOCKS),
    peakStartW: new Float64Array(FIRST_BLOCKS),
  };
}

/** Another draw has filled the wants: every sum is to be made again. */
export function forgetSums(loads: HourLoads): void {
  loads.draw++;
  loads.used = 1;
  loads.latest.fill(0);
  loads.asking.fill(0);
  if (loads.byShares.size <= MOST_PATTERNS) return;
  const { shares, blocks } = loads.nothing;
  loads.byShares.clear();
  loads.nothing = patternOf(loads.byShares, new Float64Array(shares.length), blocks.length);
}

function patternOf(byShares: Map<string, LoadPattern>, shares: Float64Array, hours: number): LoadPattern {
  const key = shares.join();
  const known = byShares.get(key);
  if (known !== undefined) return known;
  const changed = new Array<LoadPattern | undefined>(3 * shares.length).fill(undefined);
  const bits = bitsOf(shares.length, (g) => shares[g]! > 0);
  const pattern = { shares, bits, blocks: new Int32Array(hours), ofDraw: -1, changed };
  byShares.set(key, pattern);
  return pattern;
}

/** The pattern with the share of one group changed. */
export function withShare(loads: HourLoads, pattern: LoadPattern, group: number, share: number): LoadPattern {
  if (pattern.shares[group] === share) return pattern;
  const at = 3 * group + 2 * share;
  const known = pattern.changed[at];
  if (known !== undefined) return known;
  const shares = pattern.shares.slice();
  shares[group] = share;
  return (pattern.changed[at] = patternOf(loads.byShares, shares, pattern.blocks.length));
}

/** The block of the pattern's sums in an hour of the outage, made when first asked for. */
export function blockOf(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  const { hourLoads: loads } = wants;
  if (pattern.ofDraw !== loads.draw) {
    pattern.blocks.fill(0);
    pattern.ofDraw = loads.draw;
  }
  const known = pattern.blocks[hour]!;
  if (known > 0) return known;
  const alike = blockAlike(wants, pattern, hour);
  return (pattern.blocks[hour] = alike > 0 ? alike : addUp(wants, pattern, hour));
}

/** A block of the hour whose pattern differs only in groups that ask for nothing in it; 0 when there is none. */
function blockAlike(
  { hourLoads: loads, groupMostW }: SummedWants,
  pattern: LoadPattern,
  hour: number,
): number {
  if (loads.asking[hour] === 0)
    loads.asking[hour] = bitsOf(groupMostW.length, (g) => groupMostW[g]![hour]! > 0);
  const bits = pattern.bits & loads.asking[hour]!;
  const { shares } = pattern;
  for (let block = loads.latest[hour]!; block > 0; block = loads.before[block]!) {
    const other = loads.madeFor[block]!;
    if ((other.bits & loads.asking[hour]!) !== bits) continue;
    let g = 0;
    while (g < shares.length && (shares[g] === other.shares[g] || groupMostW[g]![hour] === 0)) g++;
    if (g === shares.length) return block;
  }
  return 0;
}

/** A bit for each group that `has` it, always with the highest one; groups a multiple of 31 apart share theirs. */
function bitsOf(groups: number, has: (group: number) => boolean): number {
  let bits = 1 << 31;
  for (let g = 0; g < groups; g++) if (has(g)) bits |= 1 << (g % 31);
  return bits;
}

/**
 * Groups that ask for the same watts all hour go into the block's base, those that ask for nothing are passed over.
 */
function addUp(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  const { hourLoads: loads, groupW, groupLeastW, groupMostW, groupMostExtraW } = wants;
  const block = newBlock(loads);
  const { shares } = pattern;
  const { watts } = loads;
  const at = block * MINUTES_PER_HOUR;
  let baseW = 0;
  let peakExtraW = 0;
  let first = true;
  for (let g = 0; g < shares.length; g++) {
    const share = shares[g]!;
    const mostW = groupMostW[g]![hour]!;
    if (share === 0 || mostW === 0) continue;
    peakExtraW = Math.max(peakExtraW, share * groupMostExtraW[g]![hour]!);
    if (groupLeastW[g]![hour]! === mostW) baseW += share * mostW;
    else {
      if (first) setShare(watts, at, groupW[g]!, share, hour * MINUTES_PER_HOUR);
      else addShare(watts, at, groupW[g]!, share, hour * MINUTES_PER_HOUR);
      first = false;
    }
  }
  if (first) watts.fill(0, at, at + MINUTES_PER_HOUR);
  sumUpMinutes(loads, block, first ? 0 : minutesFrom(wants.groupW[0]!, hour * MINUTES_PER_HOUR));
  loads.baseW[block] = baseW;
  loads.peakExtraW[block] = peakExtraW;
  loads.startsReady[block] = 0;
  loads.before[block] = loads.latest[hour]!;
  loads.latest[hour] = block;
  loads.madeFor[block] = pattern;
  return block;
}

/** Running sums of the block's first `count` minutes and of their squares, and the least and most of them. */
function sumUpMinutes(loads: HourLoads, block: number, count: number): void {
  const { watts, sumW, sumW2 } = loads;
  const at = block * MINUTES_PER_HOUR;
  const to = block * SUMS_PER_HOUR;
  let sum = 0;
  let sum2 = 0;
  let least = count > 0 ? watts[at]! : 0;
  let most = least;
  for (let k = 0; k < count; k++) {
    const w = watts[at + k]!;
    sumW[to + k] = sum;
    sumW2[to + k] = sum2;
    sum += w;
    sum2 += w * w;
    if (w < least) least = w;
    else if (w > most) most = w;
  }
  sumW.fill(sum, to + count, to + SUMS_PER_HOUR);
  sumW2.fill(sum2, to + count, to + SUMS_PER_HOUR);
  loads.leastW[block] = least;
  loads.mostW[block] = most;
}

function newBlock(loads: HourLoads): number {
  if (loads.used === loads.baseW.length) grow(loads);
  return loads.used++;
}

/** Twice the room. Whoever still reads the old arrays finds the same numbers in them. */
function grow(loads: HourLoads): void {
  const blocks = 2 * loads.used;
  const copyInto = <T extends Float32Array | Float64Array | Int32Array | Uint8Array>(
    larger: T,
    old: T,
  ): T => {
    larger.set(old);
    return larger;
  };
  loads.watts = copyInto(new Float32Array(blocks * MINUTES_PER_HOUR), loads.watts);
  loads.startExtraW = copyInto(new Float32Array(blocks * MINUTES_PER_HOUR), loads.startExtraW);
  loads.sumW = copyInto(new Float64Array(blocks * SUMS_PER_HOUR), loads.sumW);
  loads.sumW2 = copyInto(new Float64Array(blocks * SUMS_PER_HOUR), loads.sumW2);
  loads.startsReady = copyInto(new Uint8Array(blocks), loads.startsReady);
  loads.before = copyInto(new Int32Array(blocks), loads.before);
  loads.baseW = copyInto(new Float64Array(blocks), loads.baseW);
  loads.leastW = copyInto(new Float64Array(blocks), loads.leastW);
  loads.mostW = copyInto(new Float64Array(blocks), loads.mostW);
  loads.peakExtraW = copyInto(new Float64Array(blocks), loads.peakExtraW);
  loads.peakStartW = copyInto(new Float64Array(blocks), loads.peakStartW);
}

/** Fills in the largest extra watts of a start in each minute of the pattern's block, if they are not there yet. */
export function readyStarts(wants: SummedWants, pattern: LoadPattern, hour: number): void {
  const { hourLoads: loads, groupExtraW } = wants;
  const block = pattern.blocks[hour]!;
  if (loads.startsReady[block] === 1) return;
  const at = block * MINUTES_PER_HOUR;
  loads.startExtraW.fill(0, at, at + MINUTES_PER_HOUR);
  for (let g = 0; g < groupExtraW.length; g++) {
    const extra = groupExtraW[g];
    const share = pattern.shares[g]!;
    if (extra !== undefined && share > 0)
      keepLargerShare(loads.startExtraW, at, extra, share, hour * MINUTES_PER_HOUR);
  }
  let peak = 0;
  for (let k = 0; k < MINUTES_PER_HOUR; k++)
    peak = Math.max(peak, loads.watts[at + k]! + loads.startExtraW[at + k]!);
  loads.peakStartW[block] = peak;
  loads.startsReady[block] = 1;
}

/** Minutes of the hour that begins at minute `from` which the draw still has. */
function minutesFrom(values: Float32Array, from: number): number {
  return Math.min(MINUTES_PER_HOUR, values.length - from);
}

function setShare(sum: Float32Array, at: number, watts: Float32Array, share: number, from: number): void {
  const count = minutesFrom(watts, from);
  for (let k = 0; k < count; k++) sum[at + k] = share * watts[from + k]!;
}

function addShare(sum: Float32Array, at: number, watts: Float32Array, share: number, from: number): void {
  const count = minutesFrom(watts, from);
  for (let k = 0; k < count; k++) sum[at + k] = sum[at + k]! + share * watts[from + k]!;
}

function keepLargerShare(
  most: Float32Array,
  at: number,
  extra: Float32Array,
  share: number,
  from: number,
): void {
  const count = minutesFrom(extra, from);
  for (let k = 0; k < count; k++) {
    const w = share * extra[from + k]!;
    if (w > most[at + k]!) most[at + k] = w;
  }
}
