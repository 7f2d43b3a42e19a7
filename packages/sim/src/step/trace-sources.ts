/** A household's sources written out minute by minute, beside what each unit took from them. */
import { FROM_VEHICLE_WMIN } from '../power/source-feed.ts';
import { generatorFuelL, generatorMinutes } from './generator-run.ts';
import type { HouseholdSources } from './household-sources.ts';
import { generatorWmin, gridMinutes, type SourcesRun } from './sources-run.ts';

/** The household's sources, one value per minute; what belongs to a source that it has not is left out. */
export interface SourcesTrace {
  /** Share of the minute for which the grid was there, 0…1. */
  readonly gridOn?: Float64Array;
  /** Share of the minute for which the generator ran, 0…1. */
  readonly generatorOn?: Float64Array;
  /** AC delivered to all units together, the minute's mean. */
  readonly generatorW?: Float64Array;
  /** Burnt from the outage's start to the minute's end. */
  readonly generatorFuelL?: Float64Array;
  /** AC delivered at the vehicle's outlet, the minute's mean. */
  readonly vehicleW?: Float64Array;
}

type Column = keyof SourcesTrace;

export function emptySources({ grid, generator, vehicle }: HouseholdSources, minutes: number): SourcesTrace {
  const columns: readonly Column[] = [
    ...(grid === undefined ? [] : (['gridOn'] as const)),
    ...(generator === undefined ? [] : (['generatorOn', 'generatorW', 'generatorFuelL'] as const)),
    ...(vehicle === undefined ? [] : (['vehicleW'] as const)),
  ];
  return Object.fromEntries(columns.map((name) => [name, new Float64Array(minutes)]));
}

/** What each column's meter shows at `time`. */
export function sourceMeters(sources: SourcesRun, time: number): Readonly<Record<Column, number>> {
  const { generator, feeds } = sources;
  return {
    gridOn: gridMinutes(sources, time),
    generatorOn: generator === undefined ? 0 : generatorMinutes(generator, time),
    generatorW: generatorWmin(sources),
    generatorFuelL: generator === undefined ? 0 : generatorFuelL(generator, time, generatorWmin(sources)),
    vehicleW: feeds.reduce((sum, { sums }) => sum + sums[FROM_VEHICLE_WMIN]!, 0),
  };
}

/** Writes minute `m` from the meters at its beginning and at its end. */
export function recordSources(
  trace: SourcesTrace,
  m: number,
  before: Readonly<Record<Column, number>>,
  after: Readonly<Record<Column, number>>,
): void {
  for (const name of Object.keys(trace) as Column[])
    trace[name]![m] = name === 'generatorFuelL' ? after[name] : after[name] - before[name];
}
