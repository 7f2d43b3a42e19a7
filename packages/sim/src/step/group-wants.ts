/** What the groups of circuits want in one draw, thermostats aside. */
export interface GroupWants {
  /** Per group, watts wanted each minute. */
  readonly groupW: readonly Float32Array[];
  /** Per group, largest extra watts of a start; undefined when nothing in it starts. */
  readonly groupExtraW: readonly (Float32Array | undefined)[];
  /** Per group and hour of the outage: least and most watts of a minute, most extra watts of a start. */
  readonly groupLeastW: readonly Float32Array[];
  readonly groupMostW: readonly Float32Array[];
  readonly groupMostExtraW: readonly Float32Array[];
}
