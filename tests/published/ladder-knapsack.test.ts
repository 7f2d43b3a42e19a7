/**
 * The ladder against 0–1 knapsack problems with known optima: a step is an item, its price the weight, the days it adds
 * the profit, the budget the knapsack. Lived through by the simulator: one bank and a steady load, so that a step's
 * capacity is worth its profit in hours, whatever else was taken.
 */
import { describe, expect, it } from 'vitest';
import { askHere } from '../../packages/sim/src/index.ts';
import type { ScenarioSpec } from '../../packages/sim/src/index.ts';
import { findLadder } from '../../packages/sim/src/advice/ladder/find-ladder.ts';
import { darkSpec, scenarioOf } from '../units/advice/read-written.ts';

interface Problem {
  readonly name: string;
  readonly budget: number;
  readonly weights: readonly number[];
  readonly profits: readonly number[];
  /** Profit of the best knapsack, and of filling it by profit per weight. */
  readonly optimum: number;
  readonly greedy: number;
}

/**
 * P01 to P03: data set KNAPSACK_01, J. Burkardt, Florida State University, with its published optima (from memory;
 * the sums are checked below). The last: Kellerer, Pferschy & Pisinger 2004, Knapsack Problems, §2.1, with M = 50: filling
 * by profit per weight can be as bad as you like (from memory). Greedy profits: by hand.
 */
const PROBLEMS: readonly Problem[] = [
  {
    name: 'P01',
    budget: 165,
    weights: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82],
    profits: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72],
    optimum: 309,
    greedy: 309,
  },
  {
    name: 'P02',
    budget: 26,
    weights: [12, 7, 11, 8, 9],
    profits: [24, 13, 23, 15, 16],
    optimum: 51,
    greedy: 47,
  },
  {
    name: 'P03',
    budget: 190,
    weights: [56, 59, 80, 64, 75, 17],
    profits: [50, 50, 64, 46, 50, 5],
    optimum: 150,
    greedy: 146,
  },
  { name: 'Kellerer', budget: 50, weights: [1, 50], profits: [2, 50], optimum: 50, greedy: 2 },
];

const HOURS_PER_PROFIT = 0.1;
const BASE_HOURS = 1;

function asLadder({ weights, profits, budget }: Problem): ScenarioSpec {
  const spec = darkSpec({
    units: [{ capacityWh: 1000 * BASE_HOURS }],
    circuits: { load: { watts: 1000 } },
    hours: 72,
  });
  return {
    ...spec,
    prices: { currency: '¤', items: {} },
    ladder: {
      start: { strategy: 'rules' },
      budget,
      steps: weights.map((price, i) => ({
        id: `item-${i + 1}`,
        title: `Item ${i + 1}`,
        price,
        add: { 'units.*.battery.module.capacityWh': 1000 * HOURS_PER_PROFIT * profits[i]! },
      })),
    },
  };
}

const profitOf = (days: number | null) => (24 * days! - BASE_HOURS) / HOURS_PER_PROFIT;

describe('the ladder', () => {
  it.each(PROBLEMS)('fills knapsack $name as by hand, and its check finds the optimum', async (problem) => {
    const question = { seed: 'knapsack', choosingDraws: 1, draws: 2, mostRuns: 2000 };
    const { rungs, all, ended } = await findLadder(scenarioOf(asLadder(problem)), question, askHere);
    expect(ended).toBe('budget');
    expect(rungs.at(-1)!.paid).toBeLessThanOrEqual(problem.budget);
    expect(profitOf(rungs.at(-1)!.days.value)).toBeCloseTo(problem.greedy, 6);
    const best = all!.other === null ? rungs.at(-1)!.days.value : all!.other.days.value;
    expect(profitOf(best)).toBeCloseTo(problem.optimum, 6);
    expect(all!.other === null).toBe(problem.greedy === problem.optimum);
  });

  it.each(PROBLEMS)(
    'is held to the true optimum of $name: no other filling is better',
    ({ weights, profits, budget, optimum }) => {
      const fillings = Array.from({ length: 2 ** weights.length }, (_, code) =>
        weights.map((_, i) => Math.floor(code / 2 ** i) % 2),
      );
      const sum = (values: readonly number[], taken: readonly number[]) =>
        values.reduce((total, value, i) => total + value * taken[i]!, 0);
      const within = fillings.filter((taken) => sum(weights, taken) <= budget);
      expect(Math.max(...within.map((taken) => sum(profits, taken)))).toBe(optimum);
    },
  );
});
