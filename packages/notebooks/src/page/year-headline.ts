/** The best and the worst month for the household as it is, in one sentence, and what the next column does to them. */
import { reachText } from '@rideout/sim';
import { html } from '../elements.ts';
import { bestAndWorst, monthsTold, whyNotYet, yearCells, type YearCell } from '../charts/year-cells.ts';
import { cellInterval, columnFinding, monthsOf, ownCells, rangeText } from '../charts/year-heat-map.ts';
import { simulatedOutages, tooFewNote } from '../charts/outage-count.ts';
import type { Year } from './year-page.ts';

export function yearHeadline({ months, options }: Year): HTMLElement {
  const { columns, horizonDays, strategyTitle } = options;
  const cells = yearCells(months, columns);
  const own = ownCells(cells);
  if (!own.some((cell) => cell.days))
    return html`<div class="headline">
      <p class="answer">The year is being worked out.</p>
    </div>`;
  const next = nextColumn(cells, own);
  return html`<div class="headline">
    <p class="answer">${answer(own, horizonDays)}</p>
    <p class="soft">With “${strategyTitle}” and ${own[0]!.column.words}. ${groundWords(own, horizonDays)}</p>
    ${next.some((cell) => cell.days) ? html`<p class="soft">With ${next[0]!.column.words}: ${columnFinding(next, horizonDays)}.</p>` : ''}
  </div>`;
}

function answer(own: readonly YearCell[], horizonDays: number): readonly (string | HTMLElement)[] {
  const told = monthsTold(own);
  const strong = (text: string) => html`<strong>${text}</strong>`;
  if (told === 'not yet') return [`The months cannot be compared yet: ${whyNotYet(own)}.`];
  if (told === 'too few')
    return [
      'Too few outages to tell the months apart: nine outages in ten hold for ',
      strong(rangeText(own, horizonDays)),
      ', by month.',
    ];
  const { best, worst } = bestAndWorst(own);
  const [most, least] = [best, worst].map(([cell]) => reachText(cell!.days!.value, horizonDays));
  if (most === least) return ['Nine outages in ten hold for ', strong(most!), ' in every month.'];
  const extremes = [
    `Worst in ${monthsOf(worst)}: nine outages in ten hold for `,
    strong(least!),
    `. Best in ${monthsOf(best)}: `,
    strong(most!),
    '.',
  ];
  return told === 'apart' ? extremes : ['The months hardly differ. ', ...extremes];
}

/** What the answer rests on; nothing while the months do not rest on the same. */
function groundWords(own: readonly YearCell[], horizonDays: number): string {
  const told = monthsTold(own);
  if (told === 'not yet') return '';
  const { draws } = own[0]!;
  if (told === 'too few') return `From ${simulatedOutages(draws)} in each month.${tooFewNote(draws)}`;
  const [least] = bestAndWorst(own).worst;
  return `${least!.month}: ${cellInterval(least!, horizonDays)}, from ${simulatedOutages(draws)}.`;
}

/** Cells of the column after the household's own; none after the last. */
function nextColumn(cells: readonly YearCell[], own: readonly YearCell[]): YearCell[] {
  const columns = [...new Set(cells.map((cell) => cell.column))];
  const next = columns[columns.indexOf(own[0]!.column) + 1];
  return cells.filter((cell) => cell.column === next);
}
