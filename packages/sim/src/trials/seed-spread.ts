/** What several seeds say of the same question: is the spread between them what one of them states? */
import { sampleStandardDeviation } from 'simple-statistics';
import { Z_95 } from './normal-quantile.ts';
import { NINE_IN_TEN, timeReachedBy } from './quantile.ts';
import type { Estimate, StrategySummary, SurvivalCurve } from './study-summary.ts';

/** How far the answers of several seeds lie apart. */
export interface SeedSpread {
  /** Days that nine outages in ten reach over all seeds together; null: at least the horizon. */
  readonly togetherDays: number | null;
  /** How many seeds' 95 % intervals hold `togetherDays`. */
  readonly holding: number;
  /** 1.96 standard deviations of the seeds' estimates, days; null where the horizon hides one, or for a single seed. */
  readonly spreadDays: number | null;
  /** Mean half width of the intervals that the seeds state, days; null where the horizon hides a limit. */
  readonly statedDays: number | null;
}

/**
 * How far the answers of several seeds lie apart, held against the intervals that each states.
 *
 * @param seeds the same (alternative, strategy) from as many draws each, at least one
 */
export function seedSpread(seeds: readonly Pick<StrategySummary, 'nineInTenDays' | 'curve'>[]): SeedSpread {
  const togetherDays = pooledDays(seeds.map(({ curve }) => curve));
  const estimates = seeds.map(({ nineInTenDays }) => nineInTenDays);
  const values = estimates.flatMap(({ value }) => value ?? []);
  const widths = estimates.flatMap(({ low, high }) =>
    low === null || high === null ? [] : [(high - low) / 2],
  );
  const whole = (found: readonly number[]) => found.length === seeds.length;
  return {
    togetherDays,
    holding: estimates.filter((estimate) => holds(estimate, togetherDays)).length,
    spreadDays: whole(values) && values.length > 1 ? Z_95 * sampleStandardDeviation(values) : null,
    statedDays: whole(widths) ? widths.reduce((sum, w) => sum + w, 0) / widths.length : null,
  };
}

/** Null is the horizon or more, on either side. */
function holds({ low, high }: Estimate, days: number | null): boolean {
  return (low ?? Infinity) <= (days ?? Infinity) && (days ?? Infinity) <= (high ?? Infinity);
}

/** From curves of equal weight: their mean is the curve of all outages together, as each is cut at the same horizon. */
function pooledDays(curves: readonly SurvivalCurve[]): number | null {
  const drops = curves
    .flatMap(({ day, survival }) =>
      day.map((at, i) => ({ at, drop: ((survival[i - 1] ?? 1) - survival[i]!) / curves.length })),
    )
    .sort((a, b) => a.at - b.at);
  let share = 1;
  return timeReachedBy(
    NINE_IN_TEN,
    drops.map(({ at }) => at),
    drops.map(({ drop }) => (share -= drop)),
  );
}
