/** When in the day uses fall, as shares of the day's weight. MODEL.md §Usage, U5. */

/**
 * Local minutes 0…1440 in stretches of even weight: stretch k runs from `from[k]` for `length[k]` minutes and holds
 * the shares `share[k]` … `share[k + 1]`; stretches without weight are left out. None at all: no uses.
 */
export interface DayPattern {
  readonly from: Float64Array;
  readonly length: Float64Array;
  readonly share: Float64Array;
}

/** @param hourWeights twenty-four weights, midnight first; left out: evenly over the minutes of `awake`. */
export function dayPattern(hourWeights: readonly number[] | undefined, awake: Uint8Array): DayPattern {
  return hourWeights === undefined ? fromMinutes(awake) : fromHours(hourWeights);
}

function fromHours(weights: readonly number[]): DayPattern {
  const stretches = weights.map((weight, hour) => ({ from: hour * 60, length: 60, weight }));
  return fromStretches(stretches);
}

function fromMinutes(awake: Uint8Array): DayPattern {
  const stretches: Stretch[] = [];
  for (let m = 0; m < awake.length; m++) {
    if (awake[m] !== 1) continue;
    const last = stretches.at(-1);
    if (last !== undefined && last.from + last.length === m) {
      last.length++;
      last.weight++;
    } else stretches.push({ from: m, length: 1, weight: 1 });
  }
  return fromStretches(stretches);
}

interface Stretch {
  from: number;
  length: number;
  weight: number;
}

function fromStretches(all: readonly Stretch[]): DayPattern {
  const kept = all.filter((stretch) => stretch.weight > 0);
  const total = kept.reduce((sum, stretch) => sum + stretch.weight, 0);
  const share = [0];
  let passed = 0;
  for (const stretch of kept) {
    passed += stretch.weight;
    share.push(stretch === kept.at(-1) ? 1 : passed / total);
  }
  return {
    from: Float64Array.from(kept, (s) => s.from),
    length: Float64Array.from(kept, (s) => s.length),
    share: Float64Array.from(share),
  };
}

/** The stretch in which `share` of the day's weight has passed, at or after stretch `k`; 0 ≤ share < 1. */
export function stretchOf({ share: shares }: DayPattern, share: number, k = 0): number {
  while (share >= shares[k + 1]!) k++;
  return k;
}

/** Local minutes after midnight (fractions allowed) by which `share` of the day's weight has passed, in stretch `k`. */
export function readingAt(pattern: DayPattern, share: number, k = stretchOf(pattern, share)): number {
  const low = pattern.share[k]!;
  return pattern.from[k]! + ((share - low) / (pattern.share[k + 1]! - low)) * pattern.length[k]!;
}
