/** How each need fares under each strategy: the answer. */
import type { NeedSpec } from '../../scenario/schema-needs.ts';
import type { Estimate, Provenance } from '../../trials/study-summary.ts';

/** Of one figure over the outages: half stay at or below `median`, nine in ten at or below `nineInTen`. */
export interface Spread {
  readonly mean: number;
  readonly median: number;
  readonly nineInTen: number;
}

/** One need under one strategy of one alternative. */
export interface NeedFigures {
  readonly alternativeId: string;
  readonly alternativeTitle: string;
  readonly strategyId: string;
  readonly strategyTitle: string;
  readonly needId: string;
  /** Chance of never failing within the horizon. */
  readonly neverFails: Estimate;
  /** Days until it first fails; null: at least the horizon. */
  readonly nineInTenDays: Estimate;
  readonly medianDays: Estimate;
  /** Hours unmet over the horizon, and the longest of them in a row. */
  readonly hoursUnmet: Spread;
  readonly longestHours: Spread;
  /** How far past the limit, in the need’s `depthUnit`: degree-hours, or litres short; null where there is no such thing. */
  readonly depth: Spread | null;
  /** Warmest (food, coolth) or coldest (warmth), °C, or least litres in store, in half of the outages and in one of ten. */
  readonly extreme: { readonly median: number; readonly oneInTen: number } | null;
  /** Mean litres that the pumps raise, per person and day; null for other needs. */
  readonly litresPerPersonPerDay: number | null;
}

/** When each need fails, per strategy. */
export interface NeedsAnswer {
  readonly provenance: Provenance;
  readonly horizonDays: number;
  readonly needs: readonly {
    readonly id: string;
    readonly title: string;
    readonly measure: NeedSpec['measure'];
    /** When it counts as failed, in words. */
    readonly failsWhen: string;
    /** Of `depth`: degree-hours or litres; null where there is none. */
    readonly depthUnit: '°C·h' | 'L' | null;
    /** Of `extreme`. */
    readonly extremeUnit: '°C' | 'L' | null;
  }[];
  /** By need, then alternative, then strategy. */
  readonly figures: readonly NeedFigures[];
}
