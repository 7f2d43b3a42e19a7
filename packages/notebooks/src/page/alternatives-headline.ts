/** What the second household buys, in one sentence, and what that rests on. */
import { html } from '../elements.ts';
import { atLeastThisLong, reachText, type StudySummary } from '@rideout/sim';
import { comparison, verdictOf, type Comparison } from '../charts/alternatives-comparison.ts';
import { gainSentence } from '../charts/gain-words.ts';
import { simulatedOutages, tooFewNote } from '../charts/outage-count.ts';

export function alternativesHeadline(
  study: StudySummary,
  { alternativeId, strategyId }: { readonly alternativeId: string; readonly strategyId: string },
): HTMLElement {
  const compared = comparison(study, alternativeId, strategyId);
  if (!compared)
    return html`<div class="headline">
      <p class="answer">Choose a household and a strategy to compare.</p>
    </div>`;
  const { first, second } = compared;
  return html`<div class="headline">
    <p class="answer">${answer(compared)}</p>
    <p class="soft">
      The same ${simulatedOutages(first.draws)} side by side, with “${first.strategyTitle}”:
      “${second.alternativeTitle}” against “${first.alternativeTitle}”,
      ${gainSentence(compared)}${tooFewNote(first.draws)}
    </p>
  </div>`;
}

function answer(compared: Comparison): readonly (string | HTMLElement)[] {
  const { first, second, horizonDays } = compared;
  const reach = (s: Comparison['first']) => reachText(s.nineInTenDays.value, horizonDays);
  const strong = (text: string) => html`<strong>${text}</strong>`;
  switch (verdictOf(compared)) {
    case 'hidden by the horizon':
      return [
        `“${second.alternativeTitle}” buys nothing that shows in `,
        strong(atLeastThisLong(horizonDays)),
        `: nine outages in ten last as long as was simulated, with “${first.alternativeTitle}” too.`,
      ];
    case 'no difference':
      return [
        `“${second.alternativeTitle}” buys no time that stands out from chance: nine outages in ten hold for `,
        strong(reach(second)),
        `, and for ${reach(first)} with “${first.alternativeTitle}”.`,
      ];
    default:
      return [
        `“${second.alternativeTitle}”: nine outages in ten hold for at least `,
        strong(reach(second)),
        `; with “${first.alternativeTitle}”, ${reach(first)}.`,
      ];
  }
}
