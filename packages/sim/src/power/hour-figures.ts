/** How the hours that a unit meets lie in the arrays that its steps read. */
export const MINUTES_PER_HOUR = 60;

/** Positions in the figures of one hour's loads. */
export const BLOCK_BASE_W = 0; // watts asked for in every minute
export const BLOCK_LEAST_W = 1; // the least and the most of `watts` beside them
export const BLOCK_MOST_W = 2;
export const BLOCK_PEAK_START_W = 3; // no minute's `watts` come to more than this with the extra watts of a start
export const BLOCK_ROW = 4; // which 60 of `watts` are the block's: blocks that differ in their base share theirs
export const BLOCK_FIGURES = 5;

/** Loads of some hours, a block each; which hour each is for is its owner's to know. */
export interface LoadBlocks {
  /** BLOCK_FIGURES for each block. */
  readonly figures: Float64Array;
  /** Rows of 60: watts of the minute beside those of every minute. */
  readonly watts: Float32Array;
  /** 60 for each block: the largest extra watts of a start; only where the peak is too much for a unit that feeds the block. */
  readonly startExtraW: Float32Array;
}

/** Where a minute's loads are. */
export interface LoadPlace {
  readonly hour: number;
  readonly minuteOfHour: number;
  /** Watts asked for in every minute of the hour. */
  readonly baseW: number;
  /** Position of the minute in `watts`, and in `startExtraW`. */
  readonly at: number;
  readonly startAt: number;
}

/** @param blocks which block holds in which hour of the outage */
export function loadPlace({ figures }: LoadBlocks, blocks: Int32Array, minute: number): LoadPlace {
  const hour = (minute / MINUTES_PER_HOUR) | 0;
  const block = blocks[hour]!;
  const minuteOfHour = minute - hour * MINUTES_PER_HOUR;
  const baseW = figures[block * BLOCK_FIGURES + BLOCK_BASE_W]!;
  const row = figures[block * BLOCK_FIGURES + BLOCK_ROW]!;
  return {
    hour,
    minuteOfHour,
    baseW,
    at: row * MINUTES_PER_HOUR + minuteOfHour,
    startAt: block * MINUTES_PER_HOUR + minuteOfHour,
  };
}

/** Positions in what the cold does to a unit's bank in one hour. */
export const COLD_FLOOR_WMIN = 0; // the bank is not drawn below this
export const COLD_CHARGE_LIMIT_W = 1; // 0 when too cold to charge
export const COLD_FIGURES = 2;

/** The floor of that hour of the outage, watt-minutes. */
export function coldFloorWmin(cold: Float64Array, hour: number): number {
  return cold[hour * COLD_FIGURES + COLD_FLOOR_WMIN]!;
}

/** Usable DC solar of a unit, minute by minute from the outage's start. */
export interface SolarMinutes {
  readonly usableW: Float32Array;
  /** Watt-minutes of each hour. */
  readonly hourWmin: Float64Array;
  /** The least and the most of each hour. */
  readonly leastW: Float32Array;
  readonly mostW: Float32Array;
}

/** Watt-minutes of the minutes from `from` up to `to`: whole hours from their sums, parts of one minute by minute. */
export function solarWmin({ usableW, hourWmin }: SolarMinutes, from: number, to: number): number {
  let wmin = 0;
  for (let m = from; m < to;) {
    const hour = (m / MINUTES_PER_HOUR) | 0;
    const hourEnds = (hour + 1) * MINUTES_PER_HOUR;
    if (m === hour * MINUTES_PER_HOUR && hourEnds <= to) {
      wmin += hourWmin[hour]!;
      m = hourEnds;
    }
    for (const end = Math.min(to, hourEnds); m < end; m++) wmin += usableW[m]!;
  }
  return wmin;
}
