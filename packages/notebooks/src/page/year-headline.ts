/** The best and the worst month for the household as it is, in one sentence. */
import { html } from '../elements.ts';
import { bestAndWorst, yearCells } from '../charts/year-cells.ts';
import { cellInterval, listed, ownCells } from '../charts/year-heat-map.ts';
import { reachText } from '../charts/reach-text.ts';
import type { Year } from './year-page.ts';

export function yearHeadline({ months, options }: Year): HTMLElement {
  const { columns, horizonDays, strategyTitle } = options;
  const cells = ownCells(yearCells(months, columns));
  const { best, worst } = bestAndWorst(cells);
  const [most, least] = [best[0], worst[0]];
  if (!most || !least)
    return html`<div class="headline">
      <p class="answer">The year is being worked out.</p>
    </div>`;
  const reach = (cell: typeof most) => html`<strong>${reachText(cell.days!.value, horizonDays)}</strong>`;
  const missing = cells.filter((cell) => !cell.days).length;
  const answer =
    most.days!.value === least.days!.value
      ? ['Nine outages in ten hold for ', reach(most), ' in every month.']
      : [
          `Worst in ${listed(worst)}: nine outages in ten hold for `,
          reach(least),
          `. Best in ${listed(best)}: `,
          reach(most),
          '.',
        ];
  return html`<div class="headline">
    <p class="answer">${answer}</p>
    <p class="soft">
      With “${strategyTitle}” and ${most.column.words}. ${least.month}: ${cellInterval(least, horizonDays)},
      from ${least.draws} simulated outages.${missing > 0 ? ` ${missing} months are still to come.` : ''}
    </p>
  </div>`;
}
