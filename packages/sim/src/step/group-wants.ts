/** What the groups of circuits want in one draw, thermostats aside. */
export interface GroupWants {
  /** Per group, watts wanted each minute. */
  readonly groupW: readonly Float32Array[];
  /** Per group, largest extra watts of a start; undefined when nothing in it starts. */
  readonly groupExtraW: readonly (Float32Array | undefined)[];
  /** GROUP_FIGURES of each group for the first hour of the outage, of each for the second, and so on. */
  readonly groupHours: Float32Array;
}

/** Positions in the figures of a group's hour. */
export const GROUP_LEAST_W = 0; // least and most watts of a minute
export const GROUP_MOST_W = 1;
export const GROUP_EXTRA_W = 2; // most extra watts of a start
export const GROUP_FIGURES = 3;

/** Where the figures of the first group's hour are; those of the next groups follow. */
export function groupHourAt({ groupW }: GroupWants, hour: number): number {
  return hour * groupW.length * GROUP_FIGURES;
}
