/** The order of the rungs, on households whose days are known without living them. */
import { describe, expect, it } from 'vitest';
import { everyCombination, nextBaskets } from '../../../../packages/sim/src/advice/ladder/baskets.ts';
import { climb } from '../../../../packages/sim/src/advice/ladder/climb.ts';
import type { AskStandings } from '../../../../packages/sim/src/advice/ladder/standing.ts';
import type { LadderPlan, LadderStep } from '../../../../packages/sim/src/scenario/ladder-plan.ts';

const HORIZON = 14;

type TinyStep = Partial<LadderStep> & { readonly price: number };

function planOf(...steps: readonly TinyStep[]): LadderPlan {
  return {
    startTitle: 'Start',
    startStrategyId: 'everything',
    without: [],
    startMoves: [],
    currency: '¤',
    budget: undefined,
    confidence: 0.9,
    steps: steps.map((step, i) => ({
      id: `step-${i}`,
      title: `Step ${i}`,
      brings: [],
      moves: [],
      strategyId: undefined,
      needs: [],
      atMost: 1,
      ...step,
    })),
  };
}

/** Days from the counts alone; the mean is the same unless told. */
function living(days: (counts: readonly number[]) => number, mean = days): AskStandings {
  return (wanted) =>
    Promise.resolve(
      wanted.map((counts) => {
        const reached = days(counts);
        return {
          counts,
          strategyId: 'everything',
          days: reached >= HORIZON ? null : reached,
          meanDays: Math.min(mean(counts), HORIZON),
        };
      }),
    );
}

/** One day at the start, and so many for each time a step is taken. */
const adding = (...gains: readonly number[]) =>
  living((counts) => 1 + gains.reduce((sum, gain, i) => sum + gain * counts[i]!, 0));

async function orderOf(plan: LadderPlan, ask: AskStandings, budget?: number) {
  const { rungs, ended } = await climb(plan, ask, HORIZON, budget);
  return { taken: rungs.map((rung) => rung.taken), ended };
}

describe('the climb', () => {
  it('takes what brings the most days for its money first', async () => {
    const plan = planOf({ price: 100 }, { price: 50 }, { price: 300 });
    expect(await orderOf(plan, adding(1, 1, 4))).toEqual({ taken: [[1], [2], [0]], ended: 'all taken' });
  });

  it('takes what is free before anything that costs, the longest first, and leaves what gains nothing', async () => {
    const plan = planOf({ price: 10 }, { price: 0 }, { price: 0 }, { price: 0 });
    expect(await orderOf(plan, adding(5, 0.5, 0, 1))).toEqual({ taken: [[3], [1], [0]], ended: 'no gain' });
  });

  it('takes a step again while it still pays', async () => {
    const plan = planOf({ price: 100, atMost: 3 }, { price: 100 });
    const ask = living(([a, b]) => 1 + [0, 4, 5, 5.2][a!]! + 2 * b!);
    expect(await orderOf(plan, ask)).toEqual({ taken: [[0], [1], [0], [0]], ended: 'all taken' });
  });

  it('weighs a step together with what it needs', async () => {
    const plan = planOf({ price: 90 }, { price: 10, needs: [0] }, { price: 100 });
    expect(
      await orderOf(
        plan,
        living(([, b, c]) => 1 + 3 * b! + 2 * c!),
      ),
    ).toMatchObject({
      taken: [[0, 1], [2]],
    });
    expect(
      await orderOf(
        plan,
        living(([, b, c]) => 1 + 3 * b! + 4 * c!),
      ),
    ).toMatchObject({
      taken: [[2], [0, 1]],
    });
  });

  it('stays within the budget, to the cent, and says so', async () => {
    const plan = planOf({ price: 60 }, { price: 40 }, { price: 0.02 });
    const ask = adding(6, 3, 0.001);
    expect(await orderOf(plan, ask, 100)).toEqual({ taken: [[0], [1]], ended: 'budget' });
    expect(await orderOf(plan, ask, 99)).toEqual({ taken: [[0], [2]], ended: 'budget' });
    expect(await orderOf(plan, ask, 0)).toEqual({ taken: [], ended: 'budget' });
  });

  it('goes by the mean where the days counted do not move', async () => {
    const plan = planOf({ price: 10 }, { price: 10 });
    const ask = living(
      () => 2,
      ([a, b]) => 3 + a! + 2 * b!,
    );
    expect(await orderOf(plan, ask)).toMatchObject({ taken: [[1], [0]] });
  });

  it('goes on by the mean once the horizon hides the days, and stops where every outage outlasts it', async () => {
    const plan = planOf({ price: 10 }, { price: 10 }, { price: 10 });
    const ask = living(
      ([a]) => (a === 0 ? 3 : 20),
      ([a, b, c]) => 4 + 8 * a! + 2 * b! + c!,
    );
    expect(await orderOf(plan, ask)).toEqual({ taken: [[0], [1]], ended: 'horizon' });
  });

  it('takes two steps together where neither gains anything alone: a module on each side', async () => {
    const plan = planOf({ price: 10 }, { price: 10 }, { price: 1 });
    const ask = living(([a, b]) => 1 + Math.min(a!, b!));
    expect(await orderOf(plan, ask)).toEqual({ taken: [[0, 1]], ended: 'no gain' });
    expect(await orderOf(plan, ask, 15)).toEqual({ taken: [], ended: 'no gain' });
  });

  it('never takes a step that shortens the days', async () => {
    expect(await orderOf(planOf({ price: 0 }, { price: 5 }), adding(-1, -2))).toEqual({
      taken: [],
      ended: 'no gain',
    });
  });
});

describe('baskets', () => {
  it('are one for each step that can still be taken, with all it needs', () => {
    const plan = planOf({ price: 1 }, { price: 2, needs: [0] }, { price: 4, needs: [1], atMost: 2 });
    const prices = (counts: number[]) => nextBaskets(plan, counts).map((b) => [b.taken, b.price]);
    expect(prices([0, 0, 0])).toEqual([
      [[0], 1],
      [[0, 1], 3],
      [[0, 1, 2], 7],
    ]);
    expect(prices([1, 1, 1])).toEqual([[[2], 4]]);
    expect(prices([1, 1, 2])).toEqual([]);
  });

  it('of every combination keep needs and budget, each once', () => {
    const plan = planOf({ price: 1 }, { price: 2, needs: [0], atMost: 2 }, { price: 4 });
    const all = everyCombination(plan, undefined, 100)!;
    expect(all).toHaveLength(8);
    expect(new Set(all.map(String)).size).toBe(8);
    expect(all.every(([a, b]) => b === 0 || a === 1)).toBe(true);
    expect(everyCombination(plan, 4, 100)).toHaveLength(4);
    expect(everyCombination(plan, undefined, 7)).toBeUndefined();
  });
});
