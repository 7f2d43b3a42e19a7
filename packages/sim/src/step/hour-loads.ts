/**
 * What hangs on a unit minute by minute, thermostats aside: added up once per draw, hour by hour where it is needed,
 * for every run that asks for the same. MODEL.md §5.2.
 *
 * Strategies and alternatives that have the same circuits on meet the same pattern (load-pattern.ts), and read the same
 * sums. Watts are multiples of a 64th, so the sums are exact.
 */
import {
  BLOCK_BASE_W,
  BLOCK_FIGURES,
  BLOCK_LEAST_W,
  BLOCK_MOST_W,
  BLOCK_PEAK_START_W,
  BLOCK_ROW,
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
import {
  ALWAYS,
  bitCount,
  bitOf,
  BITS,
  createPatterns,
  differing,
  keepPatternsFew,
  type LoadPattern,
  type LoadPatterns,
} from './load-pattern.ts';

/** Hours of sums that the pool has room for at first; it grows as needed. */
const FIRST_BLOCKS = 64;
export interface HourLoads extends LoadBlocks {
  readonly patterns: LoadPatterns;
  /** Counts draws: what patterns hold of an earlier one is out of date. */
  draw: number;
  /** Blocks in use; the first is never used, so that 0 can mean none. Rows in use; the first stays empty. */
  used: number;
  rows: number;
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
  /** For each hour and each of those: the first minute of the hour in which it asks for more than its least, and the one after the last. */
  readonly moreFrom: Uint8Array;
  readonly moreTo: Uint8Array;
  before: Int32Array;
  /** Per block, the pattern it was made for. */
  madeFor: (LoadPattern | undefined)[];
}

/** The wants of a draw, and the sums made of them so far. */
export interface SummedWants extends GroupWants {
  readonly hourLoads: HourLoads;
}

export function createHourLoads(groups: number, hours: number): HourLoads {
  return {
    patterns: createPatterns(groups, hours),
    draw: 0,
    used: 1,
    rows: 1,
    figures: new Float64Array(FIRST_BLOCKS * BLOCK_FIGURES),
    watts: new Float32Array(FIRST_BLOCKS * MINUTES_PER_HOUR),
    startExtraW: new Float32Array(FIRST_BLOCKS * MINUTES_PER_HOUR),
    startsReady: new Uint8Array(FIRST_BLOCKS),
    latest: new Int32Array(hours),
    asking: new Int32Array(hours),
    varying: new Int32Array(hours),
    moreFrom: new Uint8Array(hours * groups),
    moreTo: new Uint8Array(hours * groups),
    before: new Int32Array(FIRST_BLOCKS),
    madeFor: [undefined],
  };
}

/** Another draw has filled the wants: every sum is to be made again. */
export function forgetSums(loads: HourLoads): void {
  loads.draw++;
  loads.used = 1;
  loads.rows = 1;
  loads.latest.fill(0);
  loads.asking.fill(0);
  keepPatternsFew(loads.patterns);
}

/**
 * Readies the pattern's blocks from `minute` on: makes that of its hour if it is not there yet, and goes on through the
 * hours whose blocks are. Returns the minute to which they reach, `to` at most.
 *
 * @param mindsW their starts are filled in too where an hour might come to more than this with one: few need them
 */
export function blocksUntil(
  wants: SummedWants,
  pattern: LoadPattern,
  minute: number,
  to: number,
  mindsW = Infinity,
): number {
  const { draw } = wants.hourLoads;
  const { blocks } = pattern;
  if (pattern.ofDraw !== draw) {
    blocks.fill(0);
    pattern.ofDraw = draw;
  }
  let hour = (minute / MINUTES_PER_HOUR) | 0;
  if (blocks[hour] === 0) blocks[hour] = makeBlock(wants, pattern, hour);
  const { figures } = wants.hourLoads;
  do {
    const at = blocks[hour]! * BLOCK_FIGURES;
    if (figures[at + BLOCK_BASE_W]! + figures[at + BLOCK_PEAK_START_W]! > mindsW)
      readyStarts(wants, pattern, hour, blocks[hour]!);
    hour++;
  } while (hour * MINUTES_PER_HOUR < to && blocks[hour] !== 0);
  return Math.min(to, hour * MINUTES_PER_HOUR);
}

function makeBlock(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  if (wants.hourLoads.asking[hour] === 0) lookAtHour(wants, hour);
  const alike = blockAlike(wants, pattern, hour);
  return alike > 0 ? alike : addUp(wants, pattern, hour);
}

/** Takes down, as bits, which groups ask for anything in the hour, and which for changing watts, and when for more. */
function lookAtHour(wants: SummedWants, hour: number): void {
  const { hourLoads: loads, groupHours, groupW } = wants;
  let at = groupHourAt(wants, hour);
  let asking = ALWAYS;
  let varying = ALWAYS;
  for (let g = 0; g < groupW.length; g++, at += GROUP_FIGURES) {
    const mostW = groupHours[at + GROUP_MOST_W]!;
    const leastW = groupHours[at + GROUP_LEAST_W]!;
    if (mostW > 0) asking |= bitOf(g);
    if (mostW === leastW) continue;
    varying |= bitOf(g);
    const watts = groupW[g]!;
    const from = hour * MINUTES_PER_HOUR;
    let first = 0;
    let end = minutesFrom(watts, from);
    while (watts[from + first] === leastW) first++;
    while (watts[from + end - 1] === leastW) end--;
    loads.moreFrom[hour * groupW.length + g] = first;
    loads.moreTo[hour * groupW.length + g] = end;
  }
  loads.asking[hour] = asking;
  loads.varying[hour] = varying;
}

/** A block of the hour whose pattern differs only in groups that ask for nothing in it; 0 when there is none. */
function blockAlike(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  const { hourLoads: loads } = wants;
  const asking = loads.asking[hour]!;
  const bitsTell = pattern.shares.length <= BITS;
  for (let block = loads.latest[hour]!; block > 0; block = loads.before[block]!) {
    const other = loads.madeFor[block]!;
    if (differing(pattern, other, asking) === 0 && (bitsTell || sharesAlike(wants, pattern, other, hour)))
      return block;
  }
  return 0;
}

function sharesAlike(wants: SummedWants, pattern: LoadPattern, other: LoadPattern, hour: number): boolean {
  const { groupHours } = wants;
  const at = groupHourAt(wants, hour) + GROUP_MOST_W;
  return pattern.shares.every(
    (share, g) => share === other.shares[g] || groupHours[at + g * GROUP_FIGURES] === 0,
  );
}

/** The block of the hour from whose row the pattern's is made with fewest changes; 0 for a row of nothing. */
function nearestBlock({ hourLoads: loads }: SummedWants, pattern: LoadPattern, hour: number): number {
  const varying = loads.varying[hour]! & ~ALWAYS;
  let nearest = 0;
  let fewest = bitCount(pattern.bits & varying);
  for (let block = loads.latest[hour]!; block > 0 && fewest > 0; block = loads.before[block]!) {
    const changes = bitCount(differing(pattern, loads.madeFor[block]!, varying));
    if (changes >= fewest) continue;
    nearest = block;
    fewest = changes;
  }
  return nearest;
}

/**
 * What groups ask for in every minute goes into the block's base. What they ask for beside that in some makes its row:
 * that of the nearest block with what differs added or taken away, or its very row where nothing does. Watts are kept
 * to a 64th: the sums are exact however they are come by.
 */
function addUp(wants: SummedWants, pattern: LoadPattern, hour: number): number {
  const { hourLoads: loads, groupW, groupHours } = wants;
  const like = nearestBlock(wants, pattern, hour);
  const block = newBlock(loads);
  const { shares } = pattern;
  const likeShares = (loads.madeFor[like] ?? loads.patterns.nothing).shares;
  const { figures, moreFrom, moreTo } = loads;
  const at = block * BLOCK_FIGURES;
  const likeRow = figures[like * BLOCK_FIGURES + BLOCK_ROW]! | 0;
  let mostW = figures[like * BLOCK_FIGURES + BLOCK_MOST_W]!;
  let row = likeRow;
  let taken = false;
  let first = MINUTES_PER_HOUR;
  let end = 0;
  let baseW = 0;
  let peakExtraW = 0;
  let figuresAt = groupHourAt(wants, hour);
  for (let g = 0; g < shares.length; g++, figuresAt += GROUP_FIGURES) {
    const share = shares[g]!;
    const leastOfGroupW = groupHours[figuresAt + GROUP_LEAST_W]!;
    const mostOfGroupW = groupHours[figuresAt + GROUP_MOST_W]!;
    if (mostOfGroupW === 0) continue;
    baseW += share * leastOfGroupW;
    const extraW = share * groupHours[figuresAt + GROUP_EXTRA_W]!;
    if (extraW > peakExtraW) peakExtraW = extraW;
    if (leastOfGroupW === mostOfGroupW) continue;
    const from = moreFrom[hour * shares.length + g]!;
    const to = moreTo[hour * shares.length + g]!;
    if (share > 0 && from < first) first = from;
    if (share > 0 && to > end) end = to;
    const added = share - likeShares[g]!;
    if (added === 0) continue;
    if (row === likeRow) row = copyRow(loads, likeRow);
    if (added < 0) taken = true;
    const peakW = addShare(loads, row, groupW[g]!, leastOfGroupW, added, hour * MINUTES_PER_HOUR, from, to);
    if (peakW > mostW) mostW = peakW;
  }
  figures[at + BLOCK_ROW] = row;
  figures[at + BLOCK_BASE_W] = baseW;
  figures[at + BLOCK_LEAST_W] =
    first > 0 || end < minutesFrom(groupW[0]!, hour * MINUTES_PER_HOUR) ? 0 : leastOfRow(loads, row);
  figures[at + BLOCK_MOST_W] = taken ? mostOfRow(loads, row) : mostW;
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
  const wattsAt = figures[figuresAt + BLOCK_ROW]! * MINUTES_PER_HOUR;
  let peakW = figures[figuresAt + BLOCK_MOST_W]!;
  for (let k = 0; k < MINUTES_PER_HOUR; k++)
    if (startExtraW[at + k]! > 0) peakW = Math.max(peakW, watts[wattsAt + k]! + startExtraW[at + k]!);
  figures[figuresAt + BLOCK_PEAK_START_W] = peakW;
}

function newBlock(loads: HourLoads): number {
  if (loads.used === loads.before.length) grow(loads);
  return loads.used++;
}

/** A new row like the other; there are no more of them than of blocks. Plain loop: on so few, faster than `copyWithin`. */
function copyRow(loads: HourLoads, from: number): number {
  const row = loads.rows++;
  const { watts } = loads;
  const fromAt = from * MINUTES_PER_HOUR;
  const at = row * MINUTES_PER_HOUR;
  for (let k = 0; k < MINUTES_PER_HOUR; k++) watts[at + k] = watts[fromAt + k]!;
  return row;
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

/** Adds a share of what the group asks for beside its least, which is in minutes `from` to before `to`; returns the most then. */
function addShare(
  { watts }: HourLoads,
  row: number,
  groupW: Float32Array,
  leastW: number,
  share: number,
  minute: number,
  from: number,
  to: number,
): number {
  const at = row * MINUTES_PER_HOUR;
  let most = 0;
  for (let k = from; k < to; k++) {
    const w = watts[at + k]! + share * (groupW[minute + k]! - leastW);
    watts[at + k] = w;
    if (w > most) most = w;
  }
  return most;
}

function leastOfRow({ watts }: HourLoads, row: number): number {
  let least = Infinity;
  for (let at = row * MINUTES_PER_HOUR; at < (row + 1) * MINUTES_PER_HOUR; at++)
    if (watts[at]! < least) least = watts[at]!;
  return least;
}

function mostOfRow({ watts }: HourLoads, row: number): number {
  let most = 0;
  for (let at = row * MINUTES_PER_HOUR; at < (row + 1) * MINUTES_PER_HOUR; at++)
    if (watts[at]! > most) most = watts[at]!;
  return most;
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
