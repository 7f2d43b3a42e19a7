/** What happened, in words: events of one minute and one kind told together. */
import type { EndCause } from '@rideout/sim';
import { circuitTitle, unitTitle, type OutageView } from '../charts/outage-view.ts';

export type OutageEventKind = 'trip' | 'empty' | 'unit' | 'shed' | 'restore' | 'end';

export interface OutageEvent {
  readonly minute: number;
  readonly kind: OutageEventKind;
  readonly text: string;
}

type TraceEvent = OutageView['trace']['events'][number];

const WHY: Readonly<Record<EndCause, string>> = {
  'still running': 'for no cause that is known',
  'battery empty': 'its bank is down to the cut-off',
  'overload trip': 'the circuits on it drew more than it can carry for longer than it allows',
  'starting surge trip': 'something started and for a moment drew more than it can give',
  'battery limit trip': 'the circuits on it asked for more than its bank can deliver',
  'switched off': 'it was switched off',
  'partner stopped': 'the two units of the pair stop together',
  'battery too cold': 'its bank is too cold',
};

/** In order of time. */
export function outageEvents(outage: OutageView): OutageEvent[] {
  const groups = new Map<string, TraceEvent[]>();
  for (const event of outage.trace.events) {
    const key =
      event.kind === 'circuit'
        ? `${event.minute} ${afterId(event)}`
        : `${event.minute} ${event.kind} ${event.id}`;
    groups.set(key, [...(groups.get(key) ?? []), event]);
  }
  const told = [...groups.values()].map((events) => tell(events, outage));
  return told.sort((a, b) => a.minute - b.minute); // the end is known last, and stands where it happened
}

/** "off: switched off" of "freezer off: switched off". */
function afterId({ id, text }: TraceEvent): string {
  return text.startsWith(`${id} `) ? text.slice(id.length + 1) : text;
}

function tell(events: readonly TraceEvent[], outage: OutageView): OutageEvent {
  const first = events[0]!;
  const { minute } = first;
  if (first.kind === 'end') return { minute, kind: 'end', text: endText(first, outage) };
  if (first.kind === 'unit') return { minute, ...unitTold(first, outage) };
  const names = events.map((event) => circuitTitle(outage.household, event.id)).join(', ');
  const what = afterId(first);
  if (what === 'back on') return { minute, kind: 'restore', text: `Back on: ${names}.` };
  if (what === 'off: switched off')
    return { minute, kind: 'shed', text: `${shedBy(outage, minute)}: ${names}.` };
  return { minute, kind: 'unit', text: `Without power: ${names}.` };
}

function shedBy({ carriedOutBy }: OutageView, minute: number): string {
  if (minute === 0) return 'From the start';
  return carriedOutBy === 'person' ? 'By hand' : 'By the switch';
}

function unitTold(event: TraceEvent, { household }: OutageView): Omit<OutageEvent, 'minute'> {
  const unit = unitTitle(household, event.id);
  const what = event.text.slice(`unit ${event.id} `.length);
  const cause = what.split(': ')[1] as EndCause | undefined;
  const why = cause === undefined ? '' : (WHY[cause] ?? cause);
  if (what.startsWith('trips'))
    return { kind: 'trip', text: `${unit} trips: ${why}. ${resetWords(household, event.id)}` };
  if (what.startsWith('stops: '))
    return { kind: cause === 'battery empty' ? 'empty' : 'unit', text: `${unit} stops: ${why}.` };
  if (what === 'back on') return { kind: 'restore', text: `${unit} is back on.` };
  if (what === 'put to sleep')
    return { kind: 'unit', text: `${unit} is put to sleep, as the strategy says.` };
  if (what === 'woken') return { kind: 'restore', text: `${unit} is woken.` };
  return { kind: 'unit', text: `${unit} ${what}.` };
}

function resetWords(household: OutageView['household'], id: string): string {
  const minutes = household.units.find((u) => u.id === id)?.inverter.resetsItselfAfterMinutes;
  return minutes === undefined
    ? 'It stays off until somebody resets it.'
    : `It tries again by itself after ${minutes} min.`;
}

function endText({ text }: TraceEvent, { trace }: OutageView): string {
  const cause = text.split(': ')[1] ?? '';
  const day = ((trace.runtimeMinutes ?? 0) / 1440).toFixed(1);
  return `The essentials (tier 1) have gone without for longer than they may: the runtime of this outage, ${day} days, ends here (${cause}).`;
}
