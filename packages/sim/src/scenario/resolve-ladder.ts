/** A read ladder with its values filled in: what advice climbs. */
import { partAt, placesAt } from './household-parts.ts';
import type { Move } from './ladder-plan.ts';
import type { ReadLadder } from './read-ladder.ts';
import type { HouseholdSpec, Ladder } from './scenario.ts';
import type { CheckedScenario } from './schema.ts';

/** @param householdOf looks up what a household only names */
export function resolveLadder(
  { spec, without, brings, start, after }: ReadLadder,
  described: CheckedScenario,
  householdOf: (scenario: CheckedScenario) => HouseholdSpec,
): Ladder {
  const ids = spec.steps.map((step) => step.id);
  return {
    startTitle: spec.start.title,
    startStrategyId: spec.start.strategy,
    household: householdOf(described),
    without,
    startMoves: movesOf(spec.start.change, {}, householdOf(start)),
    steps: spec.steps.map((step, i) => ({
      id: step.id,
      title: step.title,
      price: netPrice(step, spec.incentivePercent, described.prices?.items ?? {}),
      brings: brings[i]!,
      moves: movesOf(step.change ?? {}, step.add ?? {}, householdOf(after[i]!)),
      strategyId: step.strategy,
      needs: step.needs.map((need) => ids.indexOf(need)),
      atMost: step.atMost,
    })),
    currency: described.prices?.currency ?? '',
    budget: spec.budget,
    confidence: spec.confidence,
  };
}

function netPrice(
  { price, buys, incentivePercent }: ReadLadder['spec']['steps'][number],
  ladderPercent: number,
  items: Readonly<Record<string, number>>,
): number {
  const bought = Object.entries(buys ?? {}).reduce((sum, [item, count]) => sum + items[item]! * count, 0);
  return ((price ?? bought) * (100 - (incentivePercent ?? ladderPercent))) / 100;
}

/** New values are read off the household in which they were checked: defaults and typical appliances filled in. */
function movesOf(
  change: Readonly<Record<string, unknown>>,
  add: Readonly<Record<string, number>>,
  household: HouseholdSpec,
): Move[] {
  return [
    ...Object.keys(change).map((path) => ({
      set: path,
      value: partAt(household, placesAt(household, path)[0]!),
    })),
    ...Object.entries(add).map(([path, amount]) => ({ add: path, amount })),
  ];
}
