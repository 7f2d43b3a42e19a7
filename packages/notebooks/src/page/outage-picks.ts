/** A typical outage, a bad one, the worst one: chosen by how long the essentials held, and the buttons for them. */
import type { OutcomeRows } from '@rideout/sim';
import { html } from '../elements.ts';
import { placeShown } from './household-shown.ts';
import type { LiveStudy } from './live-study.ts';
import type { OutagePage } from './outage-page.ts';

export type Pick = 'typical' | 'bad' | 'worst';

const PICKS: Readonly<Record<Pick, { label: string; says: string; share: number }>> = {
  typical: { label: 'A typical one', says: 'half of the outages end sooner', share: 0.5 },
  bad: { label: 'A bad one', says: 'one in ten ends as soon', share: 0.1 },
  worst: { label: 'The worst one', says: 'none ends sooner', share: 0 },
};

/**
 * The draw at that share of the runs of one alternative and strategy, in order of runtime; equal runtimes in order of
 * draw. Of n runs: the ⌈share · n⌉-th, at least the first. Undefined when there are none.
 */
export function pickedDraw(
  { length, columns }: OutcomeRows,
  alternative: number,
  strategy: number,
  pick: Pick,
): number | undefined {
  const runs = Array.from({ length }, (_, i) => i).filter(
    (i) => columns['alternative']![i] === alternative && columns['strategy']![i] === strategy,
  );
  const [runtime, draw] = [columns['runtimeMinutes']!, columns['draw']!];
  runs.sort((a, b) => runtime[a]! - runtime[b]! || draw[a]! - draw[b]!);
  const place = Math.max(1, Math.ceil(PICKS[pick].share * runs.length)) - 1;
  return runs[place] === undefined ? undefined : draw[runs[place]];
}

/** Where the outages have not been simulated yet, a button has that done first and then keeps its word. */
export function pickButtons(page: OutagePage, live: LiveStudy): HTMLElement {
  let wish: Pick | undefined;
  const note = html`<p class="soft" role="status"></p>`;
  const choose = (pick: Pick) => {
    wish = pick;
    if (live.rows) return grant();
    if (!live.querySelector('progress')) page.runForm.dispatchEvent(new CustomEvent('input'));
    note.textContent = 'The outages are simulated first; then it is shown.';
  };
  const grant = () => {
    if (!wish || !live.rows) return;
    const { strategyIds } = page.viewForm.value;
    const draw = pickedDraw(
      live.rows,
      placeShown(page, page.viewForm.value),
      page.choices.strategies.findIndex((s) => s.id === strategyIds[0]),
      wish,
    );
    const { label, says } = PICKS[wish];
    note.textContent = draw === undefined ? '' : `${label}: outage ${draw} of those simulated; ${says}.`;
    wish = undefined;
    if (draw === undefined) return;
    page.outageForm.value = draw;
    page.outageForm.dispatchEvent(new CustomEvent('input'));
    page.span.set(undefined);
  };
  live.addEventListener('input', grant);
  const forget = () => (note.textContent = '');
  for (const form of [page.viewForm, page.runForm]) form.addEventListener('input', forget);
  const button = (pick: Pick) =>
    html`<button type="button" onclick=${() => choose(pick)}>${PICKS[pick].label}</button>`;
  return html`<div class="outage-picks screen-only">
    <div class="buttons" role="group" aria-label="Choose an outage by how long the essentials hold">
      <span>Show</span>${(['typical', 'bad', 'worst'] as const).map(button)}
    </div>
    ${note}
  </div>`;
}
