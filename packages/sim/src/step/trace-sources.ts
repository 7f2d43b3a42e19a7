/** What each source gave, minute by minute: the trace's columns beside those of units and circuits. */
import { FROM_GENERATOR_WMIN, FROM_GRID_WMIN, FROM_VEHICLE_WMIN } from '../power/source-feed.ts';
import { generatorFuelL, generatorMinutes } from './generator-run.ts';
import { now, type Run } from './run.ts';
import type { SourceEvent } from './source-events.ts';
import { generatorWmin, gridMinutes, type SourcesRun } from './sources-run.ts';

/** One source that the household has, one value per minute. */
export interface SourceTrace {
  readonly id: SourceEvent['id'];
  /** AC taken from it by all units together, the minute's mean. */
  readonly inW: Float64Array;
  /** How much of the minute it was there: grid on, generator running, vehicle plugged in; 0…1. */
  readonly onMinutes: Float64Array;
  /** Litres burnt; of a generator only. */
  readonly fuelL?: Float64Array;
}

/** What its meters show: totals since the outage's start. */
export interface SourceReading {
  readonly inWmin: number;
  readonly onMinutes: number;
  readonly fuelL: number;
}

const FEED_OF: Readonly<Record<SourceEvent['id'], number>> = {
  grid: FROM_GRID_WMIN,
  generator: FROM_GENERATOR_WMIN,
  vehicle: FROM_VEHICLE_WMIN,
};

/** Empty columns for every source there is, the one that comes first for a unit first. */
export function emptySources({ sources }: Run, minutes: number): SourceTrace[] {
  const column = () => new Float64Array(minutes);
  return (['grid', 'generator', 'vehicle'] as const)
    .filter((id) => sources?.compiled[id] !== undefined)
    .map((id) => ({
      id,
      inW: column(),
      onMinutes: column(),
      ...(id === 'generator' ? { fuelL: column() } : {}),
    }));
}

export function readSources(run: Run, traces: readonly SourceTrace[]): SourceReading[] {
  return traces.map(({ id }) => readingOf(run, run.sources!, id));
}

/** Writes the minute that lies between two readings. */
export function recordSources(
  traces: readonly SourceTrace[],
  before: readonly SourceReading[],
  after: readonly SourceReading[],
  m: number,
): void {
  traces.forEach(({ inW, onMinutes, fuelL }, s) => {
    inW[m] = after[s]!.inWmin - before[s]!.inWmin;
    onMinutes[m] = after[s]!.onMinutes - before[s]!.onMinutes;
    if (fuelL !== undefined) fuelL[m] = after[s]!.fuelL - before[s]!.fuelL;
  });
}

function readingOf(run: Run, sources: SourcesRun, id: SourceEvent['id']): SourceReading {
  const inWmin = sources.feeds.reduce((sum, { sums }) => sum + sums[FEED_OF[id]]!, 0);
  const time = now(run);
  const { generator } = sources;
  if (id === 'grid') return { inWmin, onMinutes: gridMinutes(sources, time), fuelL: 0 };
  if (id === 'vehicle') return { inWmin, onMinutes: pluggedMinutes(sources, time), fuelL: 0 };
  if (generator === undefined) return { inWmin, onMinutes: 0, fuelL: 0 }; // this strategy never runs it
  return {
    inWmin,
    onMinutes: generatorMinutes(generator, time),
    fuelL: generatorFuelL(generator, time, generatorWmin(sources)),
  };
}

/** Minutes for which a vehicle was plugged in up to `time`: its switches are known beforehand. */
function pluggedMinutes({ prepared: { vehicleSwitches } }: SourcesRun, time: number): number {
  let minutes = 0;
  for (let i = 0; i < vehicleSwitches.length && vehicleSwitches[i]! < time; i += 2)
    minutes += Math.min(vehicleSwitches[i + 1] ?? Infinity, time) - vehicleSwitches[i]!;
  return minutes;
}
