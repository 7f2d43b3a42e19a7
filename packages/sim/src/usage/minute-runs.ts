/** Runs of minutes that several appliances share: found once a draw, used by each. */

/** Run r covers minutes `from[r]` up to, not including, `to[r]`, all of local day `day[r]`. */
export interface MinuteRuns {
  count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly day: Int32Array;
}

/** Room for `most` runs. */
export function createMinuteRuns(most: number): MinuteRuns {
  return { count: 0, from: new Int32Array(most), to: new Int32Array(most), day: new Int32Array(most) };
}

/** Adds a run after the ones there are; a run without minutes, or one beyond the room, is left out. */
export function appendRun(runs: MinuteRuns, from: number, to: number, day: number): void {
  if (from >= to || runs.count === runs.from.length) return;
  const run = runs.count++;
  runs.from[run] = from;
  runs.to[run] = to;
  runs.day[run] = day;
}
