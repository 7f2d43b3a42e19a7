/** Which strategy: the answer in one sentence, and what it rests on. */
import { atLeastThisLong, type StudySummary } from '@rideout/sim';
import { html } from '../elements.ts';
import { allNeedsDays, bestForNeeds, firstToGo } from '../charts/need-endurance.ts';
import { shownStrategies, type Shown } from '../charts/nine-in-ten-words.ts';
import { intervalText } from '../charts/reach-text.ts';

export function strategyHeadline(study: StudySummary, shown: Shown): HTMLElement {
  const best = bestForNeeds(shownStrategies(study, shown));
  if (!best)
    return html`<div class="headline">
      <p class="answer">Choose a strategy to see what it keeps going.</p>
    </div>`;
  const days = allNeedsDays(best);
  const weakest = firstToGo(best);
  const { horizonDays } = study;
  const howLong = days === Infinity ? `all ${atLeastThisLong(horizonDays)} that were simulated` : atLeastThisLong(days);
  const going = weakest && days !== Infinity ? ` The first need to go is ${weakest.need}.` : '';
  return html`<div class="headline">
    <p class="answer">
      “${best.strategyTitle}” keeps ${weakest ? 'every need' : 'the essentials'} met longest:
      <strong>${howLong}</strong> in nine outages in ten.
    </p>
    <p class="soft">
      ${intervalText((weakest ?? best).nineInTenDays, horizonDays)}, from ${best.draws} simulated outages.${going}
      Household: ${best.alternativeTitle}.
    </p>
  </div>`;
}
