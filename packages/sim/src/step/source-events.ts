/** What happened to the sources in a minute, told in words. */
import { BREAKER_OPEN, IN_SERVICE, NO_FUEL, READY, REFUELLING } from './generator-run.ts';
import type { SourcesRun } from './sources-run.ts';

/** The sources' switches before a minute. */
export interface SourcesSeen {
  readonly gridIsOn: boolean;
  readonly vehicleIsOn: boolean;
  readonly running: boolean;
  readonly starts: number;
  readonly out: number;
}

export function watchSources(sources: SourcesRun | undefined): SourcesSeen | undefined {
  if (sources === undefined) return undefined;
  const { gridIsOn, vehicleIsOn, generator } = sources;
  return {
    gridIsOn,
    vehicleIsOn,
    running: generator?.running ?? false,
    starts: generator?.starts ?? 0,
    out: generator?.out ?? READY,
  };
}

export interface SourceEvent {
  /** The kind of source. */
  readonly id: 'grid' | 'generator' | 'vehicle';
  readonly text: string;
}

const WHY_OUT: Readonly<Record<number, string>> = {
  [REFUELLING]: 'the generator stops: its tank is empty, somebody fills it',
  [IN_SERVICE]: 'the generator stops for its service',
  [BREAKER_OPEN]: 'the generator’s breaker opens',
  [NO_FUEL]: 'the generator stops: no fuel left',
};

export function sourceEvents(
  sources: SourcesRun | undefined,
  before: SourcesSeen | undefined,
): readonly SourceEvent[] {
  const after = watchSources(sources);
  if (after === undefined || before === undefined) return [];
  const events: SourceEvent[] = [];
  if (after.gridIsOn !== before.gridIsOn)
    events.push({ id: 'grid', text: after.gridIsOn ? 'the grid is back' : 'the grid goes again' });
  if (after.vehicleIsOn !== before.vehicleIsOn)
    events.push({
      id: 'vehicle',
      text: after.vehicleIsOn ? 'the vehicle is plugged in' : 'the vehicle is unplugged',
    });
  if (after.starts > before.starts) events.push({ id: 'generator', text: 'the generator starts' });
  if (after.out !== before.out && WHY_OUT[after.out] !== undefined)
    events.push({ id: 'generator', text: WHY_OUT[after.out]! });
  else if (before.running && !after.running) events.push({ id: 'generator', text: 'the generator stops' });
  return events;
}
