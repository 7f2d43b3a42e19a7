/** The answer in one sentence, and what it rests on. */
import { html } from '../elements.ts';
import { atLeastThisLong, intervalText, type StrategySummary, type StudySummary } from '@rideout/sim';
import { bestAndFirst, shownStrategies, type Shown } from '../charts/nine-in-ten-words.ts';
import { simulatedOutages, tooFewToTell } from '../charts/outage-count.ts';

export function headline(study: StudySummary, shown: Shown): HTMLElement {
  const { best } = bestAndFirst(shownStrategies(study, shown));
  if (!best)
    return html`<div class="headline">
      <p class="answer">Choose a strategy to see how long it holds.</p>
    </div>`;
  const { horizonDays } = study;
  return html`<div class="headline">
    <p class="answer">
      ${tooFewToTell(best.draws) ? 'So few outages cannot tell yet what nine in ten reach. In these the essentials hold for ' : 'In nine outages in ten, the essentials hold for '}${holdsFor(best, horizonDays)}
      with “${best.strategyTitle}”.
    </p>
    <p class="soft">
      ${intervalText(best.nineInTenDays, horizonDays)}, from ${simulatedOutages(best.draws)}. Household:
      ${best.alternativeTitle}.
    </p>
  </div>`;
}

function holdsFor(best: StrategySummary, horizonDays: number): readonly (string | HTMLElement)[] {
  const days = best.nineInTenDays.value;
  if (days === null)
    return ['all ', html`<strong>${atLeastThisLong(horizonDays)}</strong>`, ' that were simulated'];
  return ['at least ', html`<strong>${atLeastThisLong(days)}</strong>`];
}
