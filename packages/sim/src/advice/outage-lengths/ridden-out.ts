/** A survival curve weighed by how long outages last. MODEL.md §20.2. */
import type { Stream } from '../../chance/streams.ts';
import { percentileLimits, type Runtimes } from '../../trials/bootstrap.ts';
import { wilson } from '../../trials/wilson.ts';
import type { LengthLaw } from './length-law.ts';

/**
 * What runs cut off at the horizon leave open: `least` takes every one of them as ended there, `most` as going on for
 * ever; for hours without it is the other way round. `low` and `high` are the 95 % limits of the two ends.
 */
export interface Bounds {
  readonly least: number;
  readonly most: number;
  readonly low: number;
  readonly high: number;
}

export interface RiddenOut {
  /** Chance that the next outage is over before tier 1 goes without. */
  readonly chance: Bounds;
  /** Hours from tier 1 going without to the end of the outage, mean per outage. */
  readonly hoursWithout: Bounds;
}

/** @param runtimes hours, aligned with `censored`; whatever is censored is so at the horizon */
export function riddenOut(
  { times, censored }: Runtimes,
  law: LengthLaw,
  resamples: number,
  chance: Stream,
): RiddenOut {
  const over = times.map(law.overBy);
  const beyond = times.map(law.meanBeyond);
  const endless = (values: Float64Array, value: number) =>
    values.map((x, i) => (censored[i] === 1 ? value : x));
  const samples = [over, endless(over, 1), endless(beyond, 0), beyond];
  const limits = meanLimits(samples, resamples, chance);
  const [overLeast, overMost, beyondLeast, beyondMost] = samples.map(meanOf);
  const ends = {
    chance: { least: overLeast!, most: overMost!, low: limits[0]!.low, high: limits[1]!.high },
    hoursWithout: { least: beyondLeast!, most: beyondMost!, low: limits[2]!.low, high: limits[3]!.high },
  };
  const unseen = wilson(0, times.length).high!;
  return {
    chance: asShares(withUnseen(ends.chance, unseen, 1)),
    hoursWithout: withUnseen(ends.hoursWithout, unseen, law.meanHours),
  };
}

/**
 * Resamples know only what was drawn: where all draws agree they leave no width at all. What never came may still have a
 * share of `unseen` (Wilson's upper limit for none of so many), and be as good or as bad as can be, 0 to `most`.
 */
function withUnseen(ends: Bounds, unseen: number, most: number): Bounds {
  return {
    ...ends,
    low: Math.min(ends.low, ends.least * (1 - unseen)),
    high: Math.max(ends.high, ends.most + (most - ends.most) * unseen),
  };
}

/** Sums of many small shares may miss 0 and 1 by their last digit. */
function asShares({ least, most, low, high }: Bounds): Bounds {
  return { least: asShare(least), most: asShare(most), low: asShare(low), high: asShare(high) };
}

const asShare = (value: number): number => Math.min(1, Math.max(0, value));

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/** Percentile bootstrap over draws; every sample meets the same resamples. */
function meanLimits(
  samples: readonly Float64Array[],
  resamples: number,
  chance: Stream,
): { low: number; high: number }[] {
  const draws = samples[0]!.length;
  const means = samples.map(() => new Float64Array(resamples));
  for (let b = 0; b < resamples; b++) {
    for (let i = 0; i < draws; i++) {
      const pick = Math.floor(chance() * draws);
      for (let s = 0; s < samples.length; s++) means[s]![b]! += samples[s]![pick]! / draws;
    }
  }
  return means.map((values) => {
    const { low, high } = percentileLimits(values.sort());
    return { low: low!, high: high! };
  });
}
