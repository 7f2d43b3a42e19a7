/** The one figure everybody asks for, in words. */
import { longestLasting, reachText, type StrategySummary, type StudySummary } from '@rideout/sim';
import { tooFewEnding } from './outage-count.ts';

/** Which (alternative, strategies) of a study are meant; strategies left out: all. */
export interface Shown {
  readonly alternativeId: string;
  readonly strategyIds?: readonly string[] | undefined;
}

/** In the study's order; may be none. */
export function shownStrategies(
  study: StudySummary,
  { alternativeId, strategyIds }: Shown,
): StrategySummary[] {
  return study.strategies.filter(
    (s) => s.alternativeId === alternativeId && (!strategyIds || strategyIds.includes(s.strategyId)),
  );
}

/** The title of the alternative meant, where it is one of several. */
export function alternativeShown(
  figures: readonly { readonly alternativeId: string; readonly alternativeTitle: string }[],
  { alternativeId }: Shown,
): string | undefined {
  const several = figures.some((f) => f.alternativeId !== alternativeId);
  return several ? figures.find((f) => f.alternativeId === alternativeId)?.alternativeTitle : undefined;
}

/** The longest-lasting strategy shown, and the first shown to compare it with, unless that is the same. */
export function bestAndFirst(strategies: readonly StrategySummary[]): {
  best?: StrategySummary;
  first?: StrategySummary;
} {
  if (strategies.length === 0) return {};
  const [best, first] = [longestLasting(strategies), strategies[0]!];
  return best === first ? { best } : { best, first };
}

/** The finding of the survival chart. */
export function nineInTenTitle(study: StudySummary, shown: Shown): string {
  const { best, first } = bestAndFirst(shownStrategies(study, shown));
  if (!best) return 'No strategy is chosen';
  const reach = (s: StrategySummary) => reachText(s.nineInTenDays.value, study.horizonDays);
  const finding = `Nine outages in ten reach ${reach(best)} with “${best.strategyTitle}”`;
  const against = first ? `, ${reach(first)} with “${first.strategyTitle}”` : '';
  return `${finding}${against}${tooFewEnding(best.draws)}`;
}
