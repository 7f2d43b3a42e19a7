/** What happened in a minute, told in words. */
import { END_CAUSES, type EndCause } from './end-causes.ts';
import { sourceEvents, watchSources, type SourcesSeen } from './source-events.ts';
import { ASLEEP, EMPTY_BANK, ON, PARTNER_STOPPED, TRIPPED, type Run } from './run.ts';

/** Something that happened in a run: a switch, a stop, a source that came or went, the end. */
export interface TraceEvent {
  readonly minute: number;
  readonly kind: 'unit' | 'circuit' | 'source' | 'end';
  /** Id of the unit or circuit, kind of source; empty for the end of the runtime. */
  readonly id: string;
  /** A unit or circuit: does it run, or have power, from then on? Null for the others. */
  readonly on: boolean | null;
  /** Why it is off, or why the runtime ended; of a unit that is woken, `switched off`. Null where there is none. */
  readonly cause: EndCause | null;
  readonly text: string;
}

/** Positions of every switch before a minute. */
export interface Switches {
  readonly modes: readonly number[];
  readonly on: readonly boolean[];
  readonly sources: SourcesSeen | undefined;
}

export function watchSwitches(run: Run): Switches {
  return {
    modes: run.units.map((u) => u.mode),
    on: run.groups.map((g) => g.on),
    sources: watchSources(run.sources),
  };
}

export function traceEvents(run: Run, before: Switches, minute: number): TraceEvent[] {
  const events: TraceEvent[] = sourceEvents(run.sources, before.sources).map((seen) => ({
    minute,
    kind: 'source',
    on: null,
    cause: null,
    ...seen,
  }));
  run.units.forEach((unit, u) => {
    if (unit.mode === before.modes[u]) return;
    const { id } = run.household.units[u]!;
    events.push({
      minute,
      kind: 'unit',
      id,
      on: unit.mode === ON,
      cause: unitCause(unit.mode, before.modes[u]!, unit.cause),
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
      on,
      cause: on ? null : END_CAUSES[offCause]!,
      text: on ? `${id} back on` : `${id} off: ${END_CAUSES[offCause]!}`,
    });
  });
  return events;
}

/** The end of the runtime: known for certain only once every stretch without power is closed. */
export function endEvents(run: Run): TraceEvent[] {
  const { minute, cause } = run.end;
  if (minute === Infinity) return [];
  const why = END_CAUSES[cause]!;
  const text = `tier 1 goes without: ${why}`;
  return [{ minute: Math.floor(minute), kind: 'end', id: '', on: null, cause: why, text }];
}

function unitCause(mode: number, before: number, cause: number): EndCause | null {
  if (mode === ASLEEP || (mode === ON && before === ASLEEP)) return 'switched off';
  if (mode === ON) return null;
  return mode === PARTNER_STOPPED ? 'partner stopped' : END_CAUSES[cause]!;
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
