/** Which minutes of a day something holds in, as runs. */

/** Run k covers readings `from[k]` up to, not including, `to[k]`, minutes after midnight; in order, none touching. */
export interface DayRuns {
  readonly from: readonly number[];
  readonly to: readonly number[];
}

/** @param inside 1 for each of the 1,440 minutes of a day in which it holds. */
export function dayRuns(inside: Uint8Array): DayRuns {
  const from: number[] = [];
  const to: number[] = [];
  for (let m = 0; m < 1440; m++) {
    if (inside[m] === 1 && (m === 0 || inside[m - 1] === 0)) from.push(m);
    if (inside[m] === 1 && (m === 1439 || inside[m + 1] === 0)) to.push(m + 1);
  }
  return { from, to };
}
