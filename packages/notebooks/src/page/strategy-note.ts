/** Which strategy a page shows, and whether another would last longer: pages open on one that a person can carry out. */
import {
  longestLasting,
  reachText,
  type Scenario,
  type StrategySummary,
  type StudySummary,
} from '@rideout/sim';
import { shownStrategies } from '../charts/nine-in-ten-words.ts';
import { tooFewToTell } from '../charts/outage-count.ts';
import { html } from '../elements.ts';
import type { ViewSettings } from './page-settings.ts';

type Strategy = Scenario['alternatives'][number]['household']['strategies'][number];

/** `summary`: of every strategy, where the page has one. `choice`: the label of the control that chooses. */
export function strategyWords(
  scenario: Scenario,
  summary: StudySummary | undefined,
  { alternativeId, strategyIds }: ViewSettings,
  choice: string,
): string {
  const { strategies } = scenario.alternatives[0]!.household;
  const shown = strategies.find(({ id }) => id === strategyIds[0]) ?? strategies[0]!;
  const said = `Shown is “${shown.title}”, ${carriedOut(shown)}.`;
  if (strategies.length === 1) return said;
  const all = summary && shownStrategies(summary, { alternativeId });
  const known = all?.some((s) => s.strategyId === shown.id) && !tooFewToTell(all[0]!.draws);
  return `${said} ${known ? bestWords(shown, strategies, all!, summary!.horizonDays, choice) : othersWords(shown, strategies, choice)}`;
}

export function strategyNote(...of: Parameters<typeof strategyWords>): HTMLElement {
  return html`<p class="soft strategy-shown">${strategyWords(...of)}</p>`;
}

function carriedOut({ carriedOutBy, rules }: Strategy): string {
  if (rules.length === 0) return 'which switches nothing off';
  return carriedOutBy === 'switch' ? 'carried out by an automatic switch' : 'carried out by hand';
}

function bestWords(
  shown: Strategy,
  strategies: readonly Strategy[],
  summaries: readonly StrategySummary[],
  horizonDays: number,
  choice: string,
): string {
  const best = longestLasting(summaries);
  const own = summaries.find((s) => s.strategyId === shown.id)!;
  const reach = (s: StrategySummary) => reachText(s.nineInTenDays.value, horizonDays);
  if (best === own || reach(best) === reach(own)) return 'None of the others is found to last longer.';
  const needs = needsSwitch(strategies.find(({ id }) => id === best.strategyId)!)
    ? ' and needs an automatic switch'
    : '';
  return `“${best.strategyTitle}” lasts longest with “${best.alternativeTitle}” (nine outages in ten reach ${reach(best)}, against ${reach(own)})${needs}: choose it under “${choice}” to see it.`;
}

function othersWords(shown: Strategy, strategies: readonly Strategy[], choice: string): string {
  const bySwitch = strategies.filter((s) => s !== shown && needsSwitch(s));
  const needs =
    bySwitch.length === 0
      ? ''
      : ` “${bySwitch[0]!.title}”${bySwitch.length > 1 ? ' and others' : ''} may last longer, and ${bySwitch.length > 1 ? 'need' : 'needs'} an automatic switch.`;
  return `Choose another under “${choice}”.${needs}`;
}

function needsSwitch({ carriedOutBy, rules }: Strategy): boolean {
  return carriedOutBy === 'switch' && rules.length > 0;
}
