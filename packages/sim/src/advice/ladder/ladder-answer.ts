/** The ladder as told: what to buy in which order, what each rung gains on outages that did not choose it. */
import type { Estimate, Provenance } from '../../trials/study-summary.ts';
import type { Told } from '../told.ts';

/** What to buy in which order, and what each rung gains on outages that did not choose it. */
export interface LadderAnswer {
  /** Seed and draws as asked for. The figures below are from draws of `freshSeed`, unless they say otherwise. */
  readonly provenance: Provenance;
  readonly freshSeed: string;
  readonly horizonDays: number;
  readonly currency: string;
  readonly budget: number | null;
  /** The share of outages that reach the days told. */
  readonly confidence: number;
  readonly start: LadderStand;
  readonly rungs: readonly LadderRung[];
  /** Why there is no further rung. */
  readonly ended: 'all taken' | 'no gain' | 'budget' | 'horizon';
  readonly left: readonly StepLeft[];
  /** Rungs that were chosen and then taken back: on the fresh draws they lose. */
  readonly takenBack: readonly LadderRung[];
  readonly all: EveryCombination | null;
}

/** How long the household lasts at one place of the ladder. */
export interface LadderStand {
  readonly title: string;
  /** The strategy that lasts longest of those at hand. */
  readonly strategyId: string;
  readonly strategyTitle: string;
  /** Days that the share reach; null = at least the horizon. */
  readonly days: Estimate;
  /** Mean of the days, each outage cut at the horizon. */
  readonly meanDays: number;
}

/** One rung: a step, with what it needed before it. */
export interface LadderRung extends LadderStand {
  readonly stepIds: readonly string[];
  readonly price: number;
  readonly paid: number;
  /** Against the rung before, on the same outages. */
  readonly gainDays: Estimate;
  readonly gainMeanDays: Estimate;
  /** Money for each day gained; null for a free rung, and where no gain is told. */
  readonly pricePerDay: number | null;
  readonly told: Told;
}

/** A step that the ladder does not take, and why. */
export interface StepLeft {
  readonly id: string;
  readonly title: string;
  readonly price: number;
  readonly why: 'no gain found' | 'over the budget' | 'not needed within the horizon' | 'taken back';
}

/** Every combination, looked at on the draws that chose the ladder. */
export interface EveryCombination {
  readonly combinations: number;
  /** Most days by which a combination for no more money is ahead of a rung, on the choosing draws. */
  readonly mostBehindDays: number;
  /** The best one within the budget, or for the ladder's money when there is none, when it is ahead of the ladder's end. */
  readonly other: BasketInstead | null;
}

/** Another set of steps, held against the ladder. */
export interface BasketInstead {
  readonly stepTitles: readonly string[];
  readonly paid: number;
  readonly days: Estimate;
  /** Against the end of the ladder, on the same outages. */
  readonly gainDays: Estimate;
  readonly gainMeanDays: Estimate;
}
