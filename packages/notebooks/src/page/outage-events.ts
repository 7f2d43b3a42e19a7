/** What happened, in words: events of one minute and one kind told together. */
import type { EndCause } from '@rideout/sim';
import { circuitTitle, unitTitle, type OutageView } from '../charts/outage-view.ts';

export type OutageEventKind = 'trip' | 'empty' | 'unit' | 'shed' | 'restore' | 'source' | 'end';

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
  'source without 240 V': 'the generator makes no 240 V, or the two units are not on it together',
};

/** In order of time. */
export function outageEvents(outage: OutageView): OutageEvent[] {
  const groups = new Map<string, TraceEvent[]>();
  for (const event of outage.trace.events) {
    const { minute, kind, id, on, cause } = event;
    const key = kind === 'circuit' ? `${minute} ${on} ${cause}` : `${minute} ${kind} ${id} ${event.text}`;
    groups.set(key, [...(groups.get(key) ?? []), event]);
  }
  const told = [...groups.values()].map((events) => tell(events, outage));
  return told.sort((a, b) => a.minute - b.minute); // the end is known last, and stands where it happened
}

function tell(events: readonly TraceEvent[], outage: OutageView): OutageEvent {
  const first = events[0]!;
  const { minute, kind } = first;
  if (kind === 'end') return { minute, kind: 'end', text: endText(first, outage) };
  if (kind === 'source') return { minute, kind: 'source', text: sourceText(first) };
  if (kind === 'unit') return { minute, ...unitTold(first, outage) };
  const names = events.map((event) => circuitTitle(outage.household, event.id)).join(', ');
  if (first.on) return { minute, kind: 'restore', text: `Back on: ${names}.` };
  if (first.cause === 'switched off')
    return { minute, kind: 'shed', text: `${shedBy(outage, minute)}: ${names}.` };
  return { minute, kind: 'unit', text: `Without power: ${names}.` };
}

function shedBy({ carriedOutBy }: OutageView, minute: number): string {
  if (minute === 0) return 'From the start';
  return carriedOutBy === 'person' ? 'By hand' : 'By the switch';
}

/** As the simulator says it, as a sentence. */
function sourceText({ text }: TraceEvent): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function unitTold({ id, on, cause }: TraceEvent, { household }: OutageView): Omit<OutageEvent, 'minute'> {
  const unit = unitTitle(household, id);
  if (on)
    return {
      kind: 'restore',
      text: cause === 'switched off' ? `${unit} is woken.` : `${unit} is back on.`,
    };
  if (cause === 'switched off')
    return { kind: 'unit', text: `${unit} is put to sleep, as the strategy says.` };
  const why = cause === null ? WHY['still running'] : WHY[cause];
  if (cause?.endsWith('trip'))
    return { kind: 'trip', text: `${unit} trips: ${why}. ${resetWords(household, id)}` };
  return { kind: cause === 'battery empty' ? 'empty' : 'unit', text: `${unit} stops: ${why}.` };
}

function resetWords(household: OutageView['household'], id: string): string {
  const minutes = household.units.find((u) => u.id === id)?.inverter.resetsItselfAfterMinutes;
  return minutes === undefined
    ? 'It stays off until somebody resets it.'
    : `It tries again by itself after ${minutes} min.`;
}

function endText({ cause }: TraceEvent, { trace }: OutageView): string {
  const day = ((trace.runtimeMinutes ?? 0) / 1440).toFixed(1);
  return `The essentials (tier 1) have gone without for longer than they may: the runtime of this outage, ${day} days, ends here (${cause ?? 'for no cause that is known'}).`;
}
