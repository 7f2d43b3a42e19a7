/**
 * What hangs on a unit minute by minute, thermostats aside: added up once per draw, hour by hour where it is needed,
 * for every run that asks for the same. MODEL.md §5.2.
 *
 * A *pattern* is the share of each group's watts that a unit carries. Strategies and alternatives that have the same
 * circuits on meet the same pattern, and read the same sums. Watts are multiples of a 64th, so the sums are exact.
 */
import {
  BLOCK_BASE_W,
  BLOCK_FIGURES,
  BLOCK_LEAST_W,
  BLOCK_MOST_W,
  BLOCK_PEAK_START_W,
  MINUTES_PER_HOUR,
  type LoadBlocks,
} from '../power/hour-figures.ts';
import {
  GROUP_EXTRA_W,
  GROUP_FIGURES,
  GROUP_LEAST_W,
  GROUP_MOST_W,
  groupHourAt,
  type GroupWants,
} from './group-wants.ts';

/** Patterns kept from draw to draw; with more than these the next draw begins anew, so that memory stays bounded. */
const MOST_PATTERNS = 400;
/** Hours of sums that the pool has room for at first; it grows as needed. */
const FIRST_BLOCKS = 64;
/** Of bits by group the highest is always set, so that 0 can mean not looked at. */
const ALWAYS = 1 << 31;

export interface LoadPattern {
  /** Per group: 0, 0.5 (240 V) or 1. */
  readonly shares: Float64Array;
  /** The groups with any share, as bits: see `bitOf`. */
  readonly bits: number;
  /** Per hour of the outage, the block of its sums; 0 where they are not made yet. Of the draw `ofDraw`. */
  readonly blocks: Int32Array;
  ofDraw: number;
  /** By group and twice its share: the pattern with that one share changed, once somebody asked for it. */
  readonly changed: (LoadPattern | undefined)[];
}

export interface HourLoads extends LoadBlocks {
  readonly byShares: Map<string, LoadPattern>;
  /** Nothing hangs on the unit. */
  nothing: LoadPattern;
  /** Counts draws: what patterns hold of an earlier one is out of date. */
  draw: number;
  /** Blocks in use; the first is never used, so that 0 can mean none. */
  used: number;
  figures: Float64Array;
  watts: Float32Array;
  startExtraW: Float32Array;
  /** 1 once a block's starts are filled in. */
  startsReady: Uint8Array;
  /** Per hour of the draw, the latest block made for it; per block, the one made before it for the same hour; 0 = none. */
  readonly latest: Int32Array;
  /** Per hour of the draw, the groups that ask for anything, as bits; 0 = not looked at yet. */
  readonly asking: Int32Array;
  /** Of them, those whose watts change in the hour. */
  readonly varying: Int32Array;
  before: Int32Array;
  /** Per block, the pattern it was made for. */
  madeFor: (LoadPattern | undefined)[];
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
    figures: new Float64Array(FIRST_BLOCKS * BLOCK_FIGURES),
    watts: new Float32Array(FIRST_BLOCKS * MINUTES_PER_HOUR),
    startExtraW: new Float32Array(FIRST_BLOCKS * MINUTES_PER_HOUR),
    startsReady: new Uint8Array(FIRST_BLOCKS),
    latest: new Int32Array(hours),
    asking: new Int32Array(hours),
    varying: new Int32Array(hours),
    before: new Int32Array(FIRST_BLOCKS),
    madeFor: [undefined],
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
  const bits = shares.reduce((all, share, g) => (share > 0 ? all | bitOf(g) : all), ALWAYS);
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

/**
 * The blocks of the pattern by hour of the outage, those from `minute` to before `to` made if they were not yet.
 *
 * @param mindsW their starts are filled in too where an hour might come to more than this with one: few need them
 */
export function blocksOf(
  wants: SummedWants,
  pattern: LoadPattern,
  minute: number,
  to: number,
  mindsW = Infinity,
): Int32Array {
  const { draw, figures } = wants.hourLoads;
  const { blocks } = pattern;
  if (pattern.ofDraw !== draw) {
    blocks.fill(0);
    pattern.ofDraw = draw;
  }
  for (let hour = (minute / MINUTES_PER_HOUR) | 0; hour * MINUTES_PER_HOUR < to; hour++) {
    if (blocks[hour] === 0) blocks[hour] = makeBlock(wants, pattern, hour);
    const at = blocks[hour]! * BLOCK_FIGURES;
    if (figures[at + BLOCK_BASE_W]! + figures[at + BLOCK_PEAK_START_W]! > mindsW)
      readyStarts(wants, pattern, hour, blocks[hour]!);
  }
  return blocks;
}

function makeBlock(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  if (wants.hourLoads.asking[hour] === 0) lookAtHour(wants, hour);
  const alike = blockAlike(wants, pattern, hour);
  return alike > 0 ? alike : addUp(wants, pattern, hour);
}

/** Takes down, as bits, which groups ask for anything in the hour, and which for changing watts. */
function lookAtHour(wants: SummedWants, hour: number): void {
  const { hourLoads: loads, groupHours, groupW } = wants;
  let at = groupHourAt(wants, hour);
  let asking = ALWAYS;
  let varying = ALWAYS;
  for (let g = 0; g < groupW.length; g++, at += GROUP_FIGURES) {
    const mostW = groupHours[at + GROUP_MOST_W]!;
    if (mostW > 0) asking |= bitOf(g);
    if (mostW > groupHours[at + GROUP_LEAST_W]!) varying |= bitOf(g);
  }
  loads.asking[hour] = asking;
  loads.varying[hour] = varying;
}

/** A block of the hour whose pattern differs only in groups that ask for nothing in it; 0 when there is none. */
function blockAlike(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  const { hourLoads: loads, groupHours } = wants;
  const asking = loads.asking[hour]!;
  const bits = pattern.bits & asking;
  const { shares } = pattern;
  const at = groupHourAt(wants, hour) + GROUP_MOST_W;
  for (let block = loads.latest[hour]!; block > 0; block = loads.before[block]!) {
    const other = loads.madeFor[block]!;
    if ((other.bits & asking) !== bits) continue;
    let g = 0;
    while (g < shares.length && (shares[g] === other.shares[g] || groupHours[at + g * GROUP_FIGURES] === 0))
      g++;
    if (g === shares.length) return block;
  }
  return 0;
}

/** The block of the hour from which the pattern's is made with fewest changes; 0 for a block of nothing. */
function nearestBlock({ hourLoads: loads }: SummedWants, { bits }: LoadPattern, hour: number): number {
  const varying = loads.varying[hour]!;
  let nearest = 0;
  let fewest = bitCount(bits & varying);
  for (let block = loads.latest[hour]!; block > 0 && fewest > 1; block = loads.before[block]!) {
    const changes = bitCount((loads.madeFor[block]!.bits ^ bits) & varying);
    if (changes >= fewest) continue;
    nearest = block;
    fewest = changes;
  }
  return nearest;
}

/** Groups a multiple of 31 apart share theirs. */
function bitOf(group: number): number {
  return 1 << (group % 31);
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

/**
 * Groups that ask for the same watts all hour go into the block's base; the others' watts are those of the nearest
 * block with what differs added or taken away. Watts are kept to a 64th: the sums are exact however they are come by.
 */
function addUp(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  const { hourLoads: loads, groupW, groupHours } = wants;
  const like = nearestBlock(wants, pattern, hour);
  const block = newBlock(loads);
  const { shares } = pattern;
  const likeShares = (loads.madeFor[like] ?? loads.nothing).shares;
  const minutes = minutesFrom(groupW[0]!, hour * MINUTES_PER_HOUR);
  let from = like; // block 0 is all nothing
  let baseW = 0;
  let peakExtraW = 0;
  let figuresAt = groupHourAt(wants, hour);
  for (let g = 0; g < shares.length; g++, figuresAt += GROUP_FIGURES) {
    const share = shares[g]!;
    const mostW = groupHours[figuresAt + GROUP_MOST_W]!;
    if (mostW === 0) continue;
    const varies = groupHours[figuresAt + GROUP_LEAST_W]! < mostW;
    if (!varies) baseW += share * mostW;
    const extraW = share * groupHours[figuresAt + GROUP_EXTRA_W]!;
    if (extraW > peakExtraW) peakExtraW = extraW;
    if (!varies || share === likeShares[g]) continue;
    addShare(loads, from, block, groupW[g]!, share - likeShares[g]!, hour * MINUTES_PER_HOUR, minutes);
    from = block;
  }
  if (from !== block) copyMinutes(loads, from, block);
  const { figures } = loads;
  const at = block * BLOCK_FIGURES;
  figures[at + BLOCK_BASE_W] = baseW;
  figures[at + BLOCK_PEAK_START_W] = figures[at + BLOCK_MOST_W]! + peakExtraW;
  loads.startsReady[block] = 0;
  loads.before[block] = loads.latest[hour]!;
  loads.latest[hour] = block;
  loads.madeFor[block] = pattern;
  return block;
}

/** Fills in the largest extra watts of a start in each minute, and the most that a minute comes to with them. */
function readyStarts(wants: SummedWants, { shares }: LoadPattern, hour: number, block: number): void {
  const { hourLoads: loads, groupExtraW, groupHours } = wants;
  const { figures, watts, startExtraW, startsReady } = loads;
  if (startsReady[block] !== 0) return;
  startsReady[block] = 1;
  const at = block * MINUTES_PER_HOUR;
  const figuresAt = block * BLOCK_FIGURES;
  startExtraW.fill(0, at, at + MINUTES_PER_HOUR);
  let groupAt = groupHourAt(wants, hour) + GROUP_EXTRA_W;
  for (let g = 0; g < shares.length; g++, groupAt += GROUP_FIGURES)
    if (shares[g]! > 0 && groupHours[groupAt]! > 0)
      keepLargerShare(startExtraW, at, groupExtraW[g]!, shares[g]!, hour * MINUTES_PER_HOUR);
  let peakW = figures[figuresAt + BLOCK_MOST_W]!;
  for (let m = at; m < at + MINUTES_PER_HOUR; m++)
    if (startExtraW[m]! > 0) peakW = Math.max(peakW, watts[m]! + startExtraW[m]!);
  figures[figuresAt + BLOCK_PEAK_START_W] = peakW;
}

function newBlock(loads: HourLoads): number {
  if (loads.used === loads.before.length) grow(loads);
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
  loads.figures = copyInto(new Float64Array(blocks * BLOCK_FIGURES), loads.figures);
  loads.watts = copyInto(new Float32Array(blocks * MINUTES_PER_HOUR), loads.watts);
  loads.startExtraW = copyInto(new Float32Array(blocks * MINUTES_PER_HOUR), loads.startExtraW);
  loads.startsReady = copyInto(new Uint8Array(blocks), loads.startsReady);
  loads.before = copyInto(new Int32Array(blocks), loads.before);
}

/** Minutes of the hour that begins at minute `from` which the draw still has. */
function minutesFrom(values: Float32Array, from: number): number {
  return Math.min(MINUTES_PER_HOUR, values.length - from);
}

/** The minutes of block `from` and a group's watts times a share together make those of `block`, and their bounds. */
function addShare(
  { watts, figures }: HourLoads,
  from: number,
  block: number,
  groupW: Float32Array,
  share: number,
  minute: number,
  count: number,
): void {
  const fromAt = from * MINUTES_PER_HOUR;
  const at = block * MINUTES_PER_HOUR;
  let before = watts[fromAt]! + share * groupW[minute]!;
  let least = before;
  let most = before;
  for (let k = 0; k < count; k++) {
    const w = watts[fromAt + k]! + share * groupW[minute + k]!;
    watts[at + k] = w;
    if (w === before) continue;
    before = w;
    if (w < least) least = w;
    else if (w > most) most = w;
  }
  figures[block * BLOCK_FIGURES + BLOCK_LEAST_W] = least;
  figures[block * BLOCK_FIGURES + BLOCK_MOST_W] = most;
}

/** Plain loop: on so few, it is faster than `copyWithin`. */
function copyMinutes({ watts, figures }: HourLoads, from: number, block: number): void {
  const fromAt = from * MINUTES_PER_HOUR;
  const at = block * MINUTES_PER_HOUR;
  for (let k = 0; k < MINUTES_PER_HOUR; k++) watts[at + k] = watts[fromAt + k]!;
  figures[block * BLOCK_FIGURES + BLOCK_LEAST_W] = figures[from * BLOCK_FIGURES + BLOCK_LEAST_W]!;
  figures[block * BLOCK_FIGURES + BLOCK_MOST_W] = figures[from * BLOCK_FIGURES + BLOCK_MOST_W]!;
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
