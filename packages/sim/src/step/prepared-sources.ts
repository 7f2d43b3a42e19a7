/** One draw's sources made ready: when the grid comes back, what the generator gives, when the vehicle is plugged in. */
import type { Streams } from '../chance/streams.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import { deratedShare } from '../power/engine-derating.ts';
import { drawGridWindows } from './grid-windows.ts';
import type { HouseholdSources } from './household-sources.ts';
import { fillVehicleHours } from './vehicle-hours.ts';

export interface PreparedSources {
  /** Minutes at which the grid comes back (1st, 3rd, …) and goes again (2nd, 4th, …). */
  readonly gridSwitches: number[];
  /** Minutes at which the vehicle is plugged in and unplugged. */
  readonly vehicleSwitches: number[];
  /** Per hour of the outage, watts that the generator gives at most. */
  readonly generatorW: Float64Array;
}

export function createPreparedSources(minutes: number): PreparedSources {
  return {
    gridSwitches: [],
    vehicleSwitches: [],
    generatorW: new Float64Array(Math.ceil(minutes / 60)),
  };
}

/**
 * @param outdoorC one value per minute
 * @param elevationM of the site
 */
export function fillPreparedSources(
  prepared: PreparedSources,
  { grid, generator, vehicle }: HouseholdSources,
  clock: OutageClock,
  outdoorC: Float32Array,
  elevationM: number,
  streams: Streams,
): void {
  const { gridSwitches, vehicleSwitches, generatorW } = prepared;
  if (grid !== undefined) drawGridWindows(grid, clock.minutes, streams('grid/windows'), gridSwitches);
  if (vehicle !== undefined) fillVehicleHours(vehicle.plan, clock, gridSwitches, vehicleSwitches);
  if (generator === undefined) return;
  for (let h = 0; h < generatorW.length; h++)
    generatorW[h] = generator.spec.ratedW * deratedShare(generator.spec, elevationM, outdoorC[h * 60]!);
}
