/** One figure of generated weather beside the observed one. */
import type { Check } from './budgets.ts';

export interface Comparison {
  /** Which check, and with it which budget. */
  readonly check: Check;
  /** Place, class, month. */
  readonly where: string;
  readonly observed: number;
  readonly generated: number;
  /** The generated figure must lie here. */
  readonly low: number;
  readonly high: number;
}

export const holds = ({ generated, low, high }: Comparison): boolean => generated >= low && generated <= high;

/** Within `tolerance` of the observed figure, or of `expected` where a stated correction moves it. */
export function near(
  check: Check,
  where: string,
  observed: number,
  generated: number,
  tolerance: number,
  expected = observed,
): Comparison {
  return { check, where, observed, generated, low: expected - tolerance, high: expected + tolerance };
}

/** Within the range of several observed places, widened by `tolerance`; places without a figure are NaN. */
export function amid(
  check: Check,
  where: string,
  observed: readonly number[],
  generated: number,
  tolerance: number,
): Comparison {
  const known = observed.filter((value) => !Number.isNaN(value));
  const middle = known.reduce((sum, value) => sum + value, 0) / known.length;
  return {
    check,
    where,
    observed: middle,
    generated,
    low: Math.min(...known) - tolerance,
    high: Math.max(...known) + tolerance,
  };
}
