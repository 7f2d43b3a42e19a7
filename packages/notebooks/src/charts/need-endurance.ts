/** How long each need is met under each strategy. */
import type { Estimate, StrategySummary } from '@rideout/sim';

export interface NeedEndurance {
  /** The household's own word. */
  readonly need: string;
  readonly nineInTenDays: Estimate;
  readonly medianDays: Estimate;
  /** Mean over outages, to the horizon. */
  readonly meanMinutesUnmet: number;
}

/** The need that goes first: shortest nine-in-ten days; among equals the one unmet longest. Undefined without needs. */
export function firstToGo({ needs }: StrategySummary): NeedEndurance | undefined {
  const days = (need: NeedEndurance) => need.nineInTenDays.value ?? Infinity;
  return [...needs].sort((a, b) => days(a) - days(b) || b.meanMinutesUnmet - a.meanMinutesUnmet)[0];
}

/** Days that every need is met in nine outages in ten; Infinity: beyond the horizon; without needs, the essentials. */
export function allNeedsDays(strategy: StrategySummary): number {
  const weakest = firstToGo(strategy);
  return (weakest ?? strategy).nineInTenDays.value ?? Infinity;
}

/** Hours in which a need goes unmet, needs added up, mean over outages. */
export function unmetHours({ needs }: StrategySummary): number {
  return needs.reduce((sum, need) => sum + need.meanMinutesUnmet, 0) / 60;
}

/** The strategy whose first need to go goes latest; among equals the one with the fewest unmet hours. */
export function bestForNeeds(strategies: readonly StrategySummary[]): StrategySummary | undefined {
  const difference = (a: number, b: number) => (a === b ? 0 : a - b); // ∞ − ∞ is no number
  return [...strategies].sort(
    (a, b) => difference(allNeedsDays(b), allNeedsDays(a)) || unmetHours(a) - unmetHours(b),
  )[0];
}

/** Whether there is no need that another strategy keeps met for longer. */
export function keepsEachLongest(best: StrategySummary, strategies: readonly StrategySummary[]): boolean {
  const days = ({ nineInTenDays }: NeedEndurance) => nineInTenDays.value ?? Infinity;
  return best.needs.every((need, i) => strategies.every((other) => days(other.needs[i]!) <= days(need)));
}

/** What the essentials are called beside the needs. */
export const ESSENTIALS = 'essentials';

/** The essentials, then the needs in the household's order. */
export function enduranceOf(strategy: StrategySummary): NeedEndurance[] {
  const { nineInTenDays, medianDays, needs } = strategy;
  return [{ need: ESSENTIALS, nineInTenDays, medianDays, meanMinutesUnmet: NaN }, ...needs];
}
