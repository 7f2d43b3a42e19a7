/** One alternative held against the first, with one strategy: the figures that every part of that page reads. */
import type { PairedDifference, StrategySummary, StudySummary } from '@rideout/sim';

export interface Comparison {
  readonly first: StrategySummary;
  readonly second: StrategySummary;
  /** Second less first, over the same draws. */
  readonly gain: PairedDifference;
  readonly horizonDays: number;
}

/** Longer and shorter: the interval of the nine-in-ten difference leaves zero out. */
export type Verdict = 'longer' | 'shorter' | 'no difference' | 'hidden by the horizon';

/** Undefined when the study holds no such pair. */
export function comparison(
  { strategies, differences, horizonDays }: StudySummary,
  alternativeId: string,
  strategyId: string,
): Comparison | undefined {
  const firstId = strategies[0]?.alternativeId;
  const cell = (id: string | undefined) =>
    strategies.find((s) => s.alternativeId === id && s.strategyId === strategyId);
  const gain = differences.find(
    (d) =>
      d.first.alternativeId === alternativeId &&
      d.second.alternativeId === firstId &&
      d.first.strategyId === strategyId &&
      d.second.strategyId === strategyId,
  );
  const [first, second] = [cell(firstId), cell(alternativeId)];
  return first && second && gain ? { first, second, gain, horizonDays } : undefined;
}

/** Less than this is no gain that anybody would plan on. */
export const LEAST_DAYS = 1 / 24;

export function verdictOf({ first, second, gain: { nineInTenDays: days } }: Comparison): Verdict {
  if (first.nineInTenDays.value === null && second.nineInTenDays.value === null)
    return 'hidden by the horizon';
  if (days.value !== null && Math.abs(days.value) < LEAST_DAYS) return 'no difference';
  if (days.low !== null && days.low > 0) return 'longer';
  if (days.high !== null && days.high < 0) return 'shorter';
  return 'no difference';
}
