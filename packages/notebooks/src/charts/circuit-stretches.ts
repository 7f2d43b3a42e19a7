/** Stretches in which a circuit is on, off by the strategy, or off because its unit is down. */
import type { DrawTrace } from '@rideout/sim';

export type StretchState = 'on' | 'shed' | 'dark';

/** Minutes [from, to). */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly state: StretchState;
}

/** Of the circuit at a position of the household: the whole outage without a gap. Every circuit begins on. */
export function circuitStretches({ events, circuits, minutes }: DrawTrace, circuit: number): Stretch[] {
  const { id, allowed } = circuits[circuit]!;
  const changes = events.filter((event) => event.kind === 'circuit' && event.id === id);
  const stretches: Stretch[] = [];
  let from = 0;
  let on = true;
  const close = (to: number) => {
    if (on) push(stretches, { from, to, state: 'on' });
    else offStretches(allowed, from, to).forEach((s) => push(stretches, s));
    from = to;
  };
  for (const change of changes) {
    close(change.minute);
    on = change.on === true;
  }
  close(minutes);
  return stretches;
}

/** A circuit that is off may be let on again before its unit is back, and the other way round. */
function offStretches(allowed: Uint8Array, from: number, to: number): Stretch[] {
  const stretches: Stretch[] = [];
  for (let m = from; m < to;) {
    const until = endOfRun(allowed, m, to);
    stretches.push({ from: m, to: until, state: allowed[m] === 1 ? 'dark' : 'shed' });
    m = until;
  }
  return stretches;
}

function endOfRun(values: Uint8Array, from: number, to: number): number {
  let end = from + 1;
  while (end < to && values[end] === values[from]) end++;
  return end;
}

/** Joins onto the last where the state is the same. */
function push(stretches: Stretch[], next: Stretch): void {
  const last = stretches[stretches.length - 1];
  if (next.to <= next.from) return;
  if (last?.state === next.state) stretches[stretches.length - 1] = { ...last, to: next.to };
  else stretches.push(next);
}

/** Minutes of [from, to) spent in a state. */
export function minutesIn(
  stretches: readonly Stretch[],
  state: StretchState,
  from: number,
  to: number,
): number {
  return stretches
    .filter((s) => s.state === state)
    .reduce((sum, s) => sum + Math.max(0, Math.min(s.to, to) - Math.max(s.from, from)), 0);
}
