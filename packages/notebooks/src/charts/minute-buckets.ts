/** Minutes gathered for drawing: a picture 800 px wide needs no 20,000 points, but every peak must stay. */

/** One stretch of minutes: at least one. */
export interface Bucket {
  /** Its middle, minutes. */
  readonly minute: number;
  readonly from: number;
  readonly to: number;
  readonly min: number;
  readonly max: number;
  readonly mean: number;
}

/** At most `most` buckets over minutes [from, to). Minimum and maximum are those of the minutes themselves. */
export function minuteBuckets(values: ArrayLike<number>, from: number, to: number, most: number): Bucket[] {
  const size = Math.max(1, Math.ceil((to - from) / Math.max(1, Math.floor(most))));
  const buckets: Bucket[] = [];
  for (let start = from; start < to; start += size)
    buckets.push(bucket(values, start, Math.min(start + size, to)));
  return buckets;
}

function bucket(values: ArrayLike<number>, from: number, to: number): Bucket {
  let [min, max, sum] = [Infinity, -Infinity, 0];
  for (let m = from; m < to; m++) {
    const value = values[m]!;
    if (value < min) min = value;
    if (value > max) max = value;
    sum += value;
  }
  return { minute: (from + to) / 2, from, to, min, max, mean: sum / (to - from) };
}

/** Mean of minutes [from, to). */
export function meanOf(values: ArrayLike<number>, from: number, to: number): number {
  return bucket(values, from, to).mean;
}

/** Position of the greatest value in [from, to); the first of equals. */
export function greatestAt(values: ArrayLike<number>, from: number, to: number): number {
  let at = from;
  for (let m = from; m < to; m++) if (values[m]! > values[at]!) at = m;
  return at;
}
