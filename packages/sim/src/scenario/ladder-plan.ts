/** A ladder with nothing left to look up: from how often each step was taken to the household that is then there. */
import { changeAt, withoutParts } from './household-parts.ts';

/** One change to a household, at a path as in alternatives. */
export type Move =
  { readonly set: string; readonly value: unknown } | { readonly add: string; readonly amount: number };

/** Something that can be bought or changed, its price and what it does to the household. */
export interface LadderStep {
  readonly id: string;
  readonly title: string;
  /** What is paid, after the incentive, in the ladder's currency; ≥ 0. */
  readonly price: number;
  /** Paths out of the plan's `without`. */
  readonly brings: readonly string[];
  readonly moves: readonly Move[];
  /** The strategy that can be followed from then on. */
  readonly strategyId: string | undefined;
  /** Positions of steps that must come before, all of them earlier in the list. */
  readonly needs: readonly number[];
  readonly atMost: number;
}

/** A ladder with nothing left to look up: its start and its steps. */
export interface LadderPlan {
  readonly startTitle: string;
  readonly startStrategyId: string;
  /** Paths, ids told, of what is missing at the start. */
  readonly without: readonly string[];
  readonly startMoves: readonly Move[];
  readonly steps: readonly LadderStep[];
  readonly currency: string;
  readonly budget: number | undefined;
  /** The share of outages that must reach the days that are counted. */
  readonly confidence: number;
}

/**
 * The household once each step was taken `counts[step]` times: first what the steps bring, then the start's changes,
 * then the steps' own in the order of their list. So it does not matter in which order they were taken.
 *
 * @param described everything there; not changed
 */
export function householdAfter<Household>(
  described: Household,
  plan: LadderPlan,
  counts: readonly number[],
): Household {
  const brought = new Set(plan.steps.flatMap((step, i) => (counts[i]! > 0 ? step.brings : [])));
  const household = withoutParts(
    described,
    plan.without.filter((path) => !brought.has(path)),
  );
  plan.startMoves.forEach((move) => make(move, household));
  plan.steps.forEach((step, i) => {
    for (let n = 0; n < counts[i]!; n++) step.moves.forEach((move) => make(move, household));
  });
  return household;
}

function make(move: Move, household: unknown): void {
  if ('set' in move) changeAt(household, move.set, () => structuredClone(move.value));
  else changeAt(household, move.add, (present) => Number(present) + move.amount);
}
