/** The best and the worst month for the household as it is, in one sentence, and what the next column does to them. */
import { html } from '../elements.ts';
import {
  bestAndWorst,
  monthsDiffer,
  yearCells,
  type BestAndWorst,
  type YearCell,
} from '../charts/year-cells.ts';
import { cellInterval, columnFinding, listed, ownCells } from '../charts/year-heat-map.ts';
import { simulatedOutages, tooFewNote } from '../charts/outage-count.ts';
import { reachText } from '../charts/reach-text.ts';
import type { Year } from './year-page.ts';

export function yearHeadline({ months, options }: Year): HTMLElement {
  const { columns, horizonDays, strategyTitle } = options;
  const cells = yearCells(months, columns);
  const own = ownCells(cells);
  const extremes = bestAndWorst(own);
  const least = extremes.worst[0];
  if (!least)
    return html`<div class="headline">
      <p class="answer">The year is being worked out.</p>
    </div>`;
  const missing = own.filter((cell) => !cell.days).length;
  const next = nextColumn(cells, least);
  return html`<div class="headline">
    <p class="answer">${answer(extremes, horizonDays)}</p>
    <p class="soft">
      With “${strategyTitle}” and ${least.column.words}. ${least.month}: ${cellInterval(least, horizonDays)},
      from
      ${simulatedOutages(least.draws)}.${tooFewNote(least.draws)}${missing > 0 ? ` ${missing} months are still to come.` : ''}
    </p>
    ${next[0] ? html`<p class="soft">With ${next[0].column.words}: ${columnFinding(bestAndWorst(next), horizonDays)}.</p>` : ''}
  </div>`;
}

function answer(extremes: BestAndWorst, horizonDays: number): readonly (string | HTMLElement)[] {
  const [most, least] = [extremes.best[0]!, extremes.worst[0]!];
  const text = (cell: YearCell) => reachText(cell.days!.value, horizonDays);
  const reach = (cell: YearCell) => html`<strong>${text(cell)}</strong>`;
  if (text(most) === text(least)) return ['Nine outages in ten hold for ', reach(most), ' in every month.'];
  const told = [
    `Worst in ${listed(extremes.worst)}: nine outages in ten hold for `,
    reach(least),
    `. Best in ${listed(extremes.best)}: `,
    reach(most),
    '.',
  ];
  return monthsDiffer(extremes) ? told : ['The months hardly differ. ', ...told];
}

/** Worked-out cells of the column after that of `cell`; none after the last. */
function nextColumn(cells: readonly YearCell[], cell: YearCell): YearCell[] {
  const columns = [...new Set(cells.map((c) => c.column))];
  const next = columns[columns.indexOf(cell.column) + 1];
  return cells.filter((c) => c.column === next && c.days);
}
