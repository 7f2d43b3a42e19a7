/** Which strategy: the answer in one sentence, and what it rests on. */
import {
  atLeastThisLong,
  intervalText,
  longestLasting,
  reachText,
  type StrategySummary,
  type StudySummary,
} from '@rideout/sim';
import { html } from '../elements.ts';
import { allNeedsDays, bestForNeeds, firstToGo, keepsEachLongest } from '../charts/need-endurance.ts';
import { shownStrategies, type Shown } from '../charts/nine-in-ten-words.ts';
import { simulatedOutages, tooFewNote } from '../charts/outage-count.ts';

export function strategyHeadline(study: StudySummary, shown: Shown): HTMLElement {
  const strategies = shownStrategies(study, shown);
  const best = bestForNeeds(strategies);
  if (!best)
    return html`<div class="headline">
      <p class="answer">Choose a strategy to see what it keeps going.</p>
    </div>`;
  const days = allNeedsDays(best);
  const weakest = firstToGo(best);
  const { horizonDays } = study;
  const howLong =
    days === Infinity ? `all ${atLeastThisLong(horizonDays)} that were simulated` : atLeastThisLong(days);
  const each = !weakest || days === Infinity || keepsEachLongest(best, strategies);
  const going = weakest && days !== Infinity ? ` The first need to go is ${weakest.need}.` : '';
  return html`<div class="headline">
    <p class="answer">
      ${
        each
          ? `“${best.strategyTitle}” keeps ${weakest ? 'every need' : 'the essentials'} met${days === Infinity ? '' : ' longest'}: `
          : `With “${best.strategyTitle}” it takes longest until any need goes unmet: `
      }
      <strong>${howLong}</strong> in nine outages in ten.
    </p>
    <p class="soft">
      ${intervalText((weakest ?? best).nineInTenDays, horizonDays)}, from
      ${simulatedOutages(best.draws)}.${tooFewNote(best.draws)}${going}
      ${essentialsWords(best, strategies, study.horizonDays)} Household: ${best.alternativeTitle}.
    </p>
  </div>`;
}

/** The essentials can go sooner than any need: a refrigerator is off before its food is warm. */
function essentialsWords(
  best: StrategySummary,
  strategies: readonly StrategySummary[],
  horizonDays: number,
): string {
  const reach = (s: StrategySummary) => reachText(s.nineInTenDays.value, horizonDays);
  const longest = longestLasting(strategies);
  const other = longest === best ? '' : `, longest with “${longest.strategyTitle}”: ${reach(longest)}`;
  return `The essentials (tier 1) together hold for ${reach(best)}${other}.`;
}
