/** The check on a ladder: every combination of steps looked at, the best one for each sum of money. */
import type { LadderPlan } from '../../scenario/ladder-plan.ts';
import { affordable, everyCombination, priceOf } from './baskets.ts';
import type { Climb } from './climb.ts';
import { householdKey } from './ladder-cells.ts';
import type { Ladder } from '../../scenario/scenario.ts';
import { lastsLonger } from '../reach.ts';
import { strategiesAfter, type AskStandings, type Standing } from './standing.ts';

export interface LookedAtAll {
  readonly combinations: number;
  /** The one that lasts longest within the budget; without one, for no more money than the whole ladder costs. */
  readonly best: Standing;
  /** Days by which the best combination for the same money is ahead of the ladder, per rung; 0 when it is not. */
  readonly behindDays: readonly number[];
}

export interface Limits {
  readonly budget: number | undefined;
  /** Most different households times strategies. */
  readonly mostRuns: number;
  readonly horizonDays: number;
}

/** Where every combination within the budget stands; undefined when that would be too many runs. */
export async function standingsOfAll(
  ladder: Ladder,
  ask: AskStandings,
  { budget, mostRuns }: Limits,
): Promise<Standing[] | undefined> {
  const combinations = everyCombination(ladder, budget, mostRuns * 16);
  if (combinations === undefined || runsOf(ladder, combinations) > mostRuns) return undefined;
  return ask(combinations);
}

/** @param standings of every combination within the budget */
export function lookAtAll(
  ladder: Ladder,
  climbed: Climb,
  standings: readonly Standing[],
  { budget, horizonDays }: Limits,
): LookedAtAll {
  const bestWithin = (money: number | undefined): Standing =>
    standings
      .filter((s) => affordable(priceOf(ladder, s.counts), money))
      .reduce((best, s) => (isBetter(ladder, s, best) ? s : best));
  const end = climbed.rungs.at(-1)?.to ?? climbed.start;
  const days = (s: Standing) => s.days ?? horizonDays;
  return {
    combinations: standings.length,
    best: bestWithin(budget ?? priceOf(ladder, end.counts)),
    behindDays: climbed.rungs.map(({ to }) =>
      Math.max(0, days(bestWithin(priceOf(ladder, to.counts))) - days(to)),
    ),
  };
}

/** Lasts longer, or as long for less money. */
function isBetter(plan: LadderPlan, a: Standing, b: Standing): boolean {
  if (lastsLonger(a, b)) return true;
  return !lastsLonger(b, a) && priceOf(plan, a.counts) < priceOf(plan, b.counts);
}

/** How many different households and strategies that comes to. */
function runsOf(ladder: Ladder, combinations: readonly (readonly number[])[]): number {
  const keys = combinations.flatMap((counts) =>
    strategiesAfter(ladder, counts).map((id) => `${id} ${householdKey(ladder, counts)}`),
  );
  return new Set(keys).size;
}
