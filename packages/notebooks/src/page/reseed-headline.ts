/** How surely the days are known, in one sentence, and what it rests on. */
import { html } from '../elements.ts';
import { atLeastThisLong, intervalText, limitTexts, reachText, type StudySummary } from '@rideout/sim';
import { simulatedOutages, tooFewNote } from '../charts/outage-count.ts';
import type { ViewSettings } from './page-settings.ts';
import { shownCell } from './reseed-shown.ts';

export function reseedHeadline(summary: StudySummary, view: ViewSettings): HTMLElement {
  const cell = shownCell(summary, view)!;
  const { horizonDays } = summary;
  const reach = (days: number | null) => reachText(days, horizonDays);
  const limits = limitTexts(cell.nineInTenDays, horizonDays);
  const surely =
    cell.nineInTenDays.low === null
      ? ['all ', html`<strong>${atLeastThisLong(horizonDays)}</strong>`, ' that were simulated']
      : ['between ', html`<strong>${limits.low}</strong>`, ' and ', html`<strong>${limits.high}</strong>`];
  return html`<div class="headline">
    <p class="answer">
      Nine outages in ten reach ${surely} with “${cell.strategyTitle}”, as far as
      ${simulatedOutages(cell.draws)} can tell.${tooFewNote(cell.draws)}
    </p>
    <p class="soft">
      That is the 95${'\u00a0'}% interval about ${reach(cell.nineInTenDays.value)}. Half of the outages reach
      ${reach(cell.medianDays.value)} (${intervalText(cell.medianDays, horizonDays)}). Household:
      ${cell.alternativeTitle}. Seed “${summary.provenance.seed}”.
    </p>
  </div>`;
}
