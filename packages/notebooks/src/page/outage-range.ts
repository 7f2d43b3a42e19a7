/** Which part of the outage is looked at: an input whose value is the part, with buttons for days. */
import { shownText, type OutageRange, type OutageView } from '../charts/outage-view.ts';
import { dateText, localDayStarts } from '../charts/local-clock.ts';
import { outageOverview } from '../charts/outage-overview.ts';
import { html } from '../elements.ts';
import type { OutageSpan } from './outage-page.ts';

/** The part asked for, inside the outage. */
export function rangeWithin(asked: OutageRange | undefined, minutes: number): OutageRange {
  const from = Math.min(asked?.from ?? 0, minutes - 1);
  const to = Math.min(asked?.to ?? minutes, minutes);
  return to > from ? { from, to, at: asked?.at } : { from: 0, to: minutes, at: undefined };
}

/** Day buttons, steps to both sides, and a strip to drag on. Told to `span`. */
export async function rangeControls(outage: OutageView, span: OutageSpan): Promise<HTMLElement> {
  const { trace, from, to } = outage;
  const starts = localDayStarts(trace);
  const whole = from === 0 && to === trace.minutes;
  const button = (label: string, range: OutageRange | undefined, pressed: boolean, name = label) =>
    html`<button
      type="button"
      aria-pressed=${String(pressed)}
      aria-label=${name}
      data-key=${name}
      onclick=${() => choose(span, range, name)}
    >
      ${label}
    </button>`;
  const days = starts.slice(0, -1).map((start, i) => {
    const range = { from: start, to: starts[i + 1]!, at: undefined };
    return button(dateText(trace, start), range, !whole && range.from === from && range.to === to);
  });
  return html`<section class="outage-range" aria-label="Part of the outage shown">
    <p>${shownText(outage)}</p>
    ${await outageOverview(outage, (range) => span.set({ ...range, at: undefined }))}
    <div class="buttons screen-only" role="group" aria-label="Part of the outage shown">
      ${button('All of it', undefined, whole)}${button('◀', moved(outage, -1), false, 'Earlier')}${button('▶', moved(outage, 1), false, 'Later')}${button('+', zoomed(outage, 0.5), false, 'Look closer')}${button('−', zoomed(outage, 2), false, 'Look from farther away')}${days}
    </div>
  </section>`;
}

/** The same length, one length earlier or later, inside the outage. */
export function moved({ from, to, trace }: OutageView, lengths: 1 | -1): OutageRange {
  const length = to - from;
  const start = Math.max(0, Math.min(from + lengths * length, trace.minutes - length));
  return { from: start, to: start + length, at: undefined };
}

const LEAST_MINUTES = 60;

/** `factor` times the length about the same middle, inside the outage. */
export function zoomed({ from, to, trace }: OutageView, factor: number): OutageRange {
  const length = Math.max(LEAST_MINUTES, Math.min(Math.round((to - from) * factor), trace.minutes));
  const start = Math.max(0, Math.min(Math.round((from + to - length) / 2), trace.minutes - length));
  return { from: start, to: Math.min(start + length, trace.minutes), at: undefined };
}

/** The controls are drawn anew: the focus stays on the button of the same name. */
function choose(span: OutageSpan, range: OutageRange | undefined, name: string): void {
  span.set(range);
  const wait = new MutationObserver(() => {
    const again = document.querySelector<HTMLElement>(`.outage-range button[data-key="${CSS.escape(name)}"]`);
    if (!again || document.activeElement === again) return;
    again.focus({ preventScroll: true });
    wait.disconnect();
  });
  wait.observe(document.body, { childList: true, subtree: true });
  setTimeout(() => wait.disconnect(), 2000);
}
