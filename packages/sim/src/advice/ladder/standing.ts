/** Where a household stands after some steps: how long it lasts by the best strategy it has. */
import { mean } from 'simple-statistics';
import type { LadderPlan } from '../../scenario/ladder-plan.ts';
import type { Runtimes } from '../../trials/bootstrap.ts';
import { MINUTES_PER_DAY } from '../../trials/minutes-per-day.ts';
import { timeReachedBy } from '../../trials/quantile.ts';
import { kaplanMeier } from '../../trials/survival.ts';
import type { AskCells } from './ladder-cells.ts';

export interface Standing {
  /** How often each step was taken. */
  readonly counts: readonly number[];
  readonly strategyId: string;
  /** Days that the chosen share of outages reach; null = at least the horizon. */
  readonly days: number | null;
  /** Mean of the days, each outage cut at the horizon. */
  readonly meanDays: number;
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
    const standings = cells.map((cell, i) => ({ ...cell, ...reached(plan.confidence, runtimes[i]!) }));
    return wanted.map((counts) =>
      standings.filter((s) => s.counts === counts).reduce((best, s) => (lastsLonger(s, best) ? s : best)),
    );
  };
}

function reached(share: number, { times, censored }: Runtimes): Pick<Standing, 'days' | 'meanDays'> {
  const table = kaplanMeier(times, censored);
  const minutes = timeReachedBy(share, table.time, table.survival);
  return {
    days: minutes === null ? null : minutes / MINUTES_PER_DAY,
    meanDays: mean(Array.from(times)) / MINUTES_PER_DAY,
  };
}

/** By the days that the share reach, then by the mean. */
export function lastsLonger(a: Standing, b: Standing): boolean {
  const [daysA, daysB] = [a.days ?? Infinity, b.days ?? Infinity];
  return daysA > daysB || (daysA === daysB && a.meanDays > b.meanDays);
}
