/** What can be taken together: a step with everything it needs, and every combination of steps. */
import type { LadderPlan } from '../../scenario/ladder-plan.ts';

const CENT = 0.005;

/** A step, and what it needs and is not there yet, in the order in which they are taken. */
export interface Basket {
  readonly taken: readonly number[];
  readonly counts: readonly number[];
  readonly price: number;
}

/** For every step that can still be taken, the basket that ends with it; each basket once. */
export function nextBaskets(plan: LadderPlan, counts: readonly number[]): Basket[] {
  const baskets = plan.steps.flatMap((step, i) => {
    if (counts[i]! >= step.atMost) return [];
    const after = [...counts];
    const taken: number[] = [];
    const take = (at: number): void => {
      for (const need of plan.steps[at]!.needs) if (after[need] === 0) take(need);
      after[at]!++;
      taken.push(at);
    };
    take(i);
    return { taken, counts: after, price: priceOf(plan, after) - priceOf(plan, counts) };
  });
  return eachOnce(baskets);
}

/** Two such baskets together: a module on one side may gain nothing without one on the other. */
export function nextPairs(plan: LadderPlan, counts: readonly number[]): Basket[] {
  const pairs = nextBaskets(plan, counts).flatMap((first) =>
    nextBaskets(plan, first.counts).map((second) => ({
      taken: [...first.taken, ...second.taken],
      counts: second.counts,
      price: first.price + second.price,
    })),
  );
  return eachOnce(pairs);
}

function eachOnce(baskets: readonly Basket[]): Basket[] {
  return baskets.filter((b, i) => baskets.findIndex((c) => sameCounts(c.counts, b.counts)) === i);
}

export function sameCounts(a: readonly number[], b: readonly number[]): boolean {
  return a.every((count, i) => count === b[i]);
}

export function priceOf(plan: LadderPlan, counts: readonly number[]): number {
  return plan.steps.reduce((sum, { price }, i) => sum + price * counts[i]!, 0);
}

/** Money is compared to the cent. */
export function affordable(paid: number, budget: number | undefined): boolean {
  return paid <= (budget ?? Infinity) + CENT;
}

/** Every way to take the steps within the budget; undefined when there are more than `most`. */
export function everyCombination(
  plan: LadderPlan,
  budget: number | undefined,
  most: number,
): (readonly number[])[] | undefined {
  let partial: (readonly number[])[] = [[]];
  for (const { atMost, needs } of plan.steps) {
    partial = partial.flatMap((counts) => {
      const most = needs.every((need) => counts[need]! > 0) ? atMost : 0;
      return Array.from({ length: most + 1 }, (_, count) => [...counts, count]);
    });
    const none = plan.steps.map(() => 0);
    partial = partial.filter((counts) =>
      affordable(priceOf(plan, [...counts, ...none.slice(counts.length)]), budget),
    );
    if (partial.length > most) return undefined;
  }
  return partial;
}
