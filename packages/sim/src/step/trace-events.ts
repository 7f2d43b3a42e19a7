/** What happened in a minute, told in words. */
import { END_CAUSES } from './end-causes.ts';
import { ASLEEP, EMPTY_BANK, ON, PARTNER_STOPPED, TRIPPED, type Run } from './run.ts';

export interface TraceEvent {
  readonly minute: number;
  readonly kind: 'unit' | 'circuit' | 'end';
  /** Id of the unit or circuit; empty for the end of the runtime. */
  readonly id: string;
  readonly text: string;
}

/** Positions of every switch before a minute. */
export interface Switches {
  readonly modes: readonly number[];
  readonly on: readonly boolean[];
}

export function watchSwitches(run: Run): Switches {
  return { modes: run.units.map((u) => u.mode), on: run.groups.map((g) => g.on) };
}

export function traceEvents(run: Run, before: Switches, minute: number): TraceEvent[] {
  const events: TraceEvent[] = [];
  run.units.forEach((unit, u) => {
    if (unit.mode === before.modes[u]) return;
    const { id } = run.household.units[u]!;
    events.push({
      minute,
      kind: 'unit',
      id,
      text: `unit ${id} ${unitText(unit.mode, before.modes[u]!, unit.cause)}`,
    });
  });
  run.household.circuits.forEach(({ id, group }) => {
    const { on, offCause } = run.groups[group]!;
    if (on === before.on[group]) return;
    events.push({
      minute,
      kind: 'circuit',
      id,
      text: on ? `${id} back on` : `${id} off: ${END_CAUSES[offCause]!}`,
    });
  });
  return events;
}

/** The end of the runtime: known for certain only once every stretch without power is closed. */
export function endEvents(run: Run): TraceEvent[] {
  const { minute, cause } = run.end;
  if (minute === Infinity) return [];
  return [
    { minute: Math.floor(minute), kind: 'end', id: '', text: `tier 1 goes without: ${END_CAUSES[cause]!}` },
  ];
}

function unitText(mode: number, before: number, cause: number): string {
  switch (mode) {
    case ON:
      return before === ASLEEP ? 'woken' : 'back on';
    case ASLEEP:
      return 'put to sleep';
    case EMPTY_BANK:
      return `stops: ${END_CAUSES[cause]!}`;
    case TRIPPED:
      return `trips: ${END_CAUSES[cause]!}`;
    case PARTNER_STOPPED:
      return 'stops with its partner';
    default:
      return '';
  }
}
