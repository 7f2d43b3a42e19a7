/** How the hours that a unit meets lie in the arrays that its steps read. */
export const MINUTES_PER_HOUR = 60;

/** Positions in the figures of one hour's loads. */
export const BLOCK_BASE_W = 0; // watts asked for in every minute
export const BLOCK_LEAST_W = 1; // the least and the most of `watts` beside them
export const BLOCK_MOST_W = 2;
export const BLOCK_PEAK_START_W = 3; // the most that `watts` and the extra watts of a start come to in one minute
export const BLOCK_SUMS = 4; // before each minute and at the end: sum of `watts`, sum of their squares
export const BLOCK_FIGURES = BLOCK_SUMS + 2 * (MINUTES_PER_HOUR + 1);

/** Loads of some hours, a block each; which hour each is for is its owner's to know. */
export interface LoadBlocks {
  /** BLOCK_FIGURES for each block. */
  readonly figures: Float64Array;
  /** 60 for each block: watts of the minute beside those of every minute, and the largest extra watts of a start. */
  readonly watts: Float32Array;
  readonly startExtraW: Float32Array;
}

/** Positions in what the cold does to a unit's bank in one hour. */
export const COLD_FLOOR_WMIN = 0; // the bank is not drawn below this
export const COLD_CHARGE_LIMIT_W = 1; // 0 when too cold to charge
export const COLD_FIGURES = 2;

/** Usable DC solar of a unit, minute by minute from the outage's start. */
export interface SolarMinutes {
  readonly usableW: Float32Array;
  /** Watt-minutes before each minute, length minutes + 1. */
  readonly wminBefore: Float64Array;
  /** The least and the most of each hour. */
  readonly leastW: Float32Array;
  readonly mostW: Float32Array;
}
