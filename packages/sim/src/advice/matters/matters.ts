/** What matters for the days, and how much: the answer. */
import type { Estimate, Provenance } from '../../trials/study-summary.ts';

/** The days at an input's low and high, and high less low on the same draws. */
export interface Swing {
  /** Null: at least the horizon. */
  readonly lowDays: number | null;
  readonly highDays: number | null;
  readonly differenceDays: Estimate;
}

/** How far one thing that nobody knows moves the days. */
export interface InputMatters {
  readonly id: string;
  readonly title: string;
  /** A figure that is fixed but not known (measure it), or what every outage brings anew (bear it). */
  readonly isValue: boolean;
  /** In words: what low and high are. */
  readonly low: string;
  readonly high: string;
  /** Of the days that nine outages in ten reach, and of the median. */
  readonly nineInTen: Swing;
  readonly median: Swing;
  /** Sobol' indices of the days, cut at the horizon: alone, and with everything done together with others. */
  readonly firstOrder: Estimate;
  readonly total: Estimate;
}

/** Which of the things that nobody knows move the days, the greatest first. */
export interface Matters {
  readonly provenance: Provenance;
  readonly horizonDays: number;
  readonly alternativeId: string;
  readonly alternativeTitle: string;
  readonly strategyId: string;
  readonly strategyTitle: string;
  /** With every value in the middle of its range. */
  readonly middle: { readonly nineInTenDays: Estimate; readonly medianDays: Estimate };
  /** Of the days, cut at the horizon, over every input at once. */
  readonly meanDays: number;
  readonly sdDays: number;
  /** Share of the outages run for the global measure that reached the horizon: what lies past it does not count. */
  readonly hiddenFraction: number;
  /** What first-order indices leave over: inputs acting together. Null where nothing varies. */
  readonly togetherFraction: number | null;
  /** Largest total index first. */
  readonly inputs: readonly InputMatters[];
}
