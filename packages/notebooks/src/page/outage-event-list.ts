/** Every event of an outage, day by day, each leading to its place on the time axis. */
import { counted } from '../charts/counted.ts';
import { clockText, dateText, longDateText } from '../charts/local-clock.ts';
import type { OutageRange, OutageView } from '../charts/outage-view.ts';
import { html } from '../elements.ts';
import { outageEvents, type OutageEvent, type OutageEventKind } from './outage-events.ts';
import type { OutageSpan } from './outage-page.ts';

const SIGNS: Readonly<Record<OutageEventKind, { sign: string; name: string }>> = {
  trip: { sign: '⚡', name: 'Trip' },
  empty: { sign: '▽', name: 'Empty' },
  unit: { sign: '○', name: 'Off' },
  shed: { sign: '▼', name: 'Dropped' },
  restore: { sign: '▲', name: 'Back' },
  source: { sign: '◆', name: 'Source' },
  end: { sign: '■', name: 'End' },
};

/** Minutes shown about an event that lies outside what is shown. */
const ABOUT = 720;

export function outageEventList(outage: OutageView, span: OutageSpan): HTMLElement {
  unfoldForPaper();
  const events = outageEvents(outage);
  const days = [...new Set(events.map((e) => outage.trace.localDay[e.minute]!))];
  return html`<section class="outage-events" aria-labelledby="outage-events-title">
    <h2 id="outage-events-title">What happens, and when</h2>
    <p class="soft">
      ${events.length === 0 ? 'Nothing: no unit stops and no circuit is switched.' : 'A button marks its minute in every chart. Dropped: off because the strategy says so.'}
    </p>
    ${days.map((day) =>
      dayList(
        events.filter((e) => outage.trace.localDay[e.minute] === day),
        outage,
        span,
      ),
    )}
  </section>`;
}

/** Of days that are open for the time of printing only. */
const FOR_PAPER = 'forPaper';
let onPaper: boolean | undefined;

/** Paper cannot be unfolded: while it prints, every day is open. Once for the page, whose list is drawn anew and anew. */
function unfoldForPaper(): void {
  if (onPaper !== undefined) return;
  onPaper = false;
  const days = () => document.querySelectorAll<HTMLDetailsElement>('.outage-events details');
  addEventListener('beforeprint', () => {
    onPaper = true;
    for (const day of days()) openForPaper(day);
  });
  addEventListener('afterprint', () => {
    onPaper = false;
    for (const day of days())
      if (FOR_PAPER in day.dataset) {
        day.open = false;
        delete day.dataset[FOR_PAPER];
      }
  });
}

function openForPaper(day: HTMLDetailsElement): void {
  if (day.open) return;
  day.open = true;
  day.dataset[FOR_PAPER] = '';
}

/** Open where the day is in view and not much of the outage is; the pointed-at minute's day always is. */
function dayList(events: readonly OutageEvent[], outage: OutageView, span: OutageSpan): HTMLElement {
  const { trace, from, to, at } = outage;
  const first = events[0]!.minute;
  const seen = events.some((e) => e.minute >= from && e.minute < to);
  const open =
    (seen && to - from <= 2 * 1440) || events.some((e) => e.minute === at) || trace.localDay[first] === 0;
  const list = html`<details open=${open}>
    <summary>${longDateText(trace, first)}: ${counted(events.length, 'event')}</summary>
    <ol>
      ${events.map((event) => eventItem(event, outage, span))}
    </ol>
  </details>` as HTMLDetailsElement;
  if (onPaper) openForPaper(list);
  return list;
}

function eventItem(event: OutageEvent, outage: OutageView, span: OutageSpan): HTMLElement {
  const { trace, clock, at } = outage;
  const time = clockText(trace, event.minute, clock);
  const { sign, name } = SIGNS[event.kind];
  return html`<li class=${event.kind}>
    <button
      type="button"
      aria-pressed=${String(event.minute === at)}
      aria-label=${`Show ${dateText(trace, event.minute)}, ${time} in the charts`}
      onclick=${() => span.set(around(event.minute, outage))}
    >
      ${time}
    </button>
    <span><span class="sign" aria-hidden="true">${sign}</span> <strong>${name}.</strong> ${event.text}</span>
  </li>`;
}

/** What is shown now if the minute is in it; half a day to both sides otherwise. */
function around(minute: number, { from, to, trace }: OutageView): OutageRange {
  if (minute >= from && minute < to) return { from, to, at: minute };
  const start = Math.max(0, Math.min(minute - ABOUT, trace.minutes - 2 * ABOUT));
  return { from: start, to: Math.min(start + 2 * ABOUT, trace.minutes), at: minute };
}
