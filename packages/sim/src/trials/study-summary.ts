/** What a study says: the figures behind every table, chart and sentence. Days are 24 h from the outage's start. */
import type { RechargeTimes } from '../step/recharge.ts';
import type { EndCause } from './outcome-rows.ts';

/** An estimate with its pointwise 95 % interval; null where the horizon hides it (censored). */
export interface Estimate {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** A step curve: `survival[i]` holds from `day[i]` until the next. Starts at day 0 with survival 1. */
export interface SurvivalCurve {
  readonly day: readonly number[];
  readonly survival: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** Energies, hours and litres are means per draw over the whole horizon. */
export interface SourcesSummary {
  /** AC taken from every source together. */
  readonly sourceInKWh: number;
  readonly gridHours: number;
  /** Undefined where the household has none. */
  readonly generator: GeneratorSummary | undefined;
  readonly recharge: RechargeTimes;
}

/** What a generator did, the mean over all draws. */
export interface GeneratorSummary {
  readonly hours: number;
  readonly starts: number;
  /** Times that its breaker opened. */
  readonly trips: number;
  readonly fuelL: number;
  /** In tank and cans when the grid goes. */
  readonly fuelOnHandL: number;
  /** Days until tank and cans are done, that nine outages in ten and half of them reach; null: at least the horizon. */
  readonly nineInTenFuelDays: Estimate;
  readonly medianFuelDays: Estimate;
}

/** One (alternative, strategy) of a study. */
export interface StrategySummary {
  readonly alternativeId: string;
  readonly alternativeTitle: string;
  readonly strategyId: string;
  readonly strategyTitle: string;
  readonly draws: number;
  readonly censoredDraws: number;
  readonly curve: SurvivalCurve;
  /** Days that nine outages in ten reach. A null value means: at least the horizon. */
  readonly nineInTenDays: Estimate;
  readonly medianDays: Estimate;
  /** Chance of reaching each of the asked-for days (Wilson interval); days beyond the horizon are left out. */
  readonly reach: readonly { readonly days: number; readonly chance: Estimate }[];
  readonly ends: readonly {
    readonly cause: EndCause;
    readonly unitId: string | null;
    readonly fraction: number;
  }[];
  /** Means per draw over the horizon, kWh. Index 0 is tier 1. */
  readonly servedKWhByTier: readonly number[];
  readonly unservedKWhByTier: readonly number[];
  readonly meanByColumn: Readonly<Record<string, number | null>>;
  /** Endurance per need: days until first unmet (median, nine in ten), mean minutes unmet. */
  readonly needs: readonly {
    readonly need: string;
    readonly nineInTenDays: Estimate;
    readonly medianDays: Estimate;
    readonly meanMinutesUnmet: number;
  }[];
  /** What came back besides the panels; left out where the household has no source. */
  readonly sources?: SourcesSummary;
}

/** Paired difference in runtime, same draws, first less second. */
export interface PairedDifference {
  readonly first: { readonly alternativeId: string; readonly strategyId: string };
  readonly second: { readonly alternativeId: string; readonly strategyId: string };
  /** Difference of mean runtime up to the horizon, days. */
  readonly meanDays: Estimate;
  /** Difference of the days nine in ten reach (bootstrap over draws). */
  readonly nineInTenDays: Estimate;
  /** Share of draws in which the first lasts longer, the second lasts longer, and neither. */
  readonly firstLongerFraction: number;
  readonly secondLongerFraction: number;
}

/** What it takes to repeat a number. */
export interface Provenance {
  readonly scenarioHash: string;
  readonly scenarioTitle: string;
  readonly seed: string;
  readonly draws: number;
  /** Other draws, on which what these tell of was chosen. */
  readonly choosingDraws?: number;
  /** The seed of the draws that these tell of, where others chose. */
  readonly freshSeed?: string;
  /** What was asked for in the place of what the scenario's file says, as it is typed: the hash is of both together. */
  readonly askedWith?: string | undefined;
  readonly version: string;
  readonly weatherName: string;
}

/** Every figure of a study, and what it takes to repeat them. */
export interface StudySummary {
  readonly provenance: Provenance;
  readonly horizonDays: number;
  readonly strategies: readonly StrategySummary[];
  /** Within each alternative: each strategy against the first. Within each strategy: each alternative against the first. */
  readonly differences: readonly PairedDifference[];
}
