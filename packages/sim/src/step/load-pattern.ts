/** Which groups of circuits hang on a unit: one pattern each, shared by the runs and the draws of a household. MODEL.md §5.2. */

/** Patterns kept from draw to draw; with more than these the next draw begins anew, so that memory stays bounded. */
const MOST_PATTERNS = 400;
/** Of bits by group the highest is always set, so that 0 can mean not looked at. */
export const ALWAYS = 1 << 31;
export const BITS = 31;

/** The share of each group's watts that a unit carries. */
export interface LoadPattern {
  /** Per group: 0, 0.5 (240 V) or 1. */
  readonly shares: Float64Array;
  /** The groups with any share, and those with a half, as bits: see `bitOf`. */
  readonly bits: number;
  readonly halves: number;
  /** Per hour of the outage, the block of its sums; 0 where they are not made yet. Of the draw `ofDraw`. */
  readonly blocks: Int32Array;
  ofDraw: number;
  /** By group and twice its share: the pattern with that one share changed, once somebody asked for it. */
  readonly changed: (LoadPattern | undefined)[];
}

/** Those of one household met so far. */
export interface LoadPatterns {
  readonly byShares: Map<string, LoadPattern>;
  /** Nothing hangs on the unit. */
  nothing: LoadPattern;
}

export function createPatterns(groups: number, hours: number): LoadPatterns {
  const byShares = new Map<string, LoadPattern>();
  return { byShares, nothing: patternOf(byShares, new Float64Array(groups), hours) };
}

/** Between draws, when no run holds one. */
export function keepPatternsFew(patterns: LoadPatterns): void {
  if (patterns.byShares.size <= MOST_PATTERNS) return;
  const { shares, blocks } = patterns.nothing;
  patterns.byShares.clear();
  patterns.nothing = patternOf(patterns.byShares, new Float64Array(shares.length), blocks.length);
}

function patternOf(byShares: Map<string, LoadPattern>, shares: Float64Array, hours: number): LoadPattern {
  const key = shares.join();
  const known = byShares.get(key);
  if (known !== undefined) return known;
  const changed = new Array<LoadPattern | undefined>(3 * shares.length).fill(undefined);
  const bits = shares.reduce((all, share, g) => (share > 0 ? all | bitOf(g) : all), ALWAYS);
  const halves = shares.reduce((all, share, g) => (share === 0.5 ? all | bitOf(g) : all), 0);
  const pattern = { shares, bits, halves, blocks: new Int32Array(hours), ofDraw: -1, changed };
  byShares.set(key, pattern);
  return pattern;
}

/** The pattern with the share of one group changed. */
export function withShare(
  patterns: LoadPatterns,
  pattern: LoadPattern,
  group: number,
  share: number,
): LoadPattern {
  if (pattern.shares[group] === share) return pattern;
  const at = 3 * group + 2 * share;
  const known = pattern.changed[at];
  if (known !== undefined) return known;
  const shares = pattern.shares.slice();
  shares[group] = share;
  return (pattern.changed[at] = patternOf(patterns.byShares, shares, pattern.blocks.length));
}

/** Of the groups in `among`, those whose shares differ. */
export function differing(pattern: LoadPattern, other: LoadPattern, among: number): number {
  return ((pattern.bits ^ other.bits) | (pattern.halves ^ other.halves)) & among;
}

/** Groups a multiple of BITS apart share theirs. */
export function bitOf(group: number): number {
  return 1 << (group % BITS);
}

export function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}
