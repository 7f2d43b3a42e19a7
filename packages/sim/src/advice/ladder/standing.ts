/** Where a household stands after some steps: how long it lasts by the best strategy it has. */
import type { LadderPlan } from '../../scenario/ladder-plan.ts';
import { lastsLonger, reachOf, type Reach } from '../reach.ts';
import type { AskCells } from './ladder-cells.ts';

export interface Standing extends Reach {
  /** How often each step was taken. */
  readonly counts: readonly number[];
  readonly strategyId: string;
}

export type AskStandings = (counts: readonly (readonly number[])[]) => Promise<Standing[]>;

/** Strategies that can be followed after these steps, the start's first. */
export function strategiesAfter(plan: LadderPlan, counts: readonly number[]): string[] {
  const gained = plan.steps.flatMap(({ strategyId }, i) => (counts[i]! > 0 && strategyId ? strategyId : []));
  return [...new Set([plan.startStrategyId, ...gained])];
}

export function createStandings(plan: LadderPlan, ask: AskCells): AskStandings {
  return async (wanted) => {
    const cells = wanted.flatMap((counts) =>
      strategiesAfter(plan, counts).map((strategyId) => ({ counts, strategyId })),
    );
    const runtimes = await ask(cells);
    const standings = cells.map((cell, i) => ({ ...cell, ...reachOf(runtimes[i]!, plan.confidence) }));
    return wanted.map((counts) =>
      standings.filter((s) => s.counts === counts).reduce((best, s) => (lastsLonger(s, best) ? s : best)),
    );
  };
}
