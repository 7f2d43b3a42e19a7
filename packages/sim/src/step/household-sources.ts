/** A household's sources compiled for the minute loop: everything that no draw changes. MODEL.md E1–E7. */
import { fuelLineOf, type FuelLine } from '../power/fuel-use.ts';
import {
  FEED_CHARGER_W,
  FEED_EFFICIENCY,
  FEED_KIND,
  FEED_PASSES,
  FEED_SETTINGS,
  FROM_GENERATOR_WMIN,
  FROM_GRID_WMIN,
  FROM_VEHICLE_WMIN,
} from '../power/source-feed.ts';
import { unitsFedBy } from '../scenario/fed-units.ts';
import type { HouseholdSpec } from '../scenario/scenario.ts';
import type { GeneratorSpec, GridSpec } from '../scenario/schema-sources.ts';
import type { UnitSpec } from '../scenario/schema.ts';
import { planGenerator, type GeneratorPlan } from '../shedding/generator-plan.ts';
import { planVehicle, type VehiclePlan } from './vehicle-hours.ts';

export interface CompiledGenerator {
  readonly spec: GeneratorSpec;
  readonly line: FuelLine;
  /** Most litres that a minute can burn: below so much it stops. */
  readonly mostLPerMinute: number;
  readonly surgeW: number;
  /** 1 for each unit that it feeds. */
  readonly feeds: Uint8Array;
  /** Per strategy; undefined where it never runs. */
  readonly plans: readonly (GeneratorPlan | undefined)[];
}

export interface CompiledVehicle {
  readonly plan: VehiclePlan;
  readonly unit: number;
  readonly outletW: number;
}

export interface HouseholdSources {
  readonly grid: GridSpec | undefined;
  readonly generator: CompiledGenerator | undefined;
  readonly vehicle: CompiledVehicle | undefined;
  /** Per unit, the settings of a feed from each kind of source: see power/source-feed.ts. */
  readonly feedSettings: readonly (readonly Float64Array[])[];
}

/** Undefined for a household that has no source. */
export function compileSources(spec: HouseholdSpec): HouseholdSources | undefined {
  const { sources, units } = spec;
  if (sources?.grid === undefined && sources?.generator === undefined && sources?.vehicle === undefined)
    return undefined;
  const { grid, generator, vehicle } = sources;
  return {
    grid,
    generator: generator === undefined ? undefined : compileGenerator(generator, spec),
    vehicle:
      vehicle === undefined
        ? undefined
        : {
            plan: planVehicle(vehicle),
            unit: units.findIndex((u) => u.id === vehicle.unit),
            outletW: vehicle.outletW,
          },
    feedSettings: units.map((unit) => [
      feed(FROM_GRID_WMIN, true, unit),
      feed(FROM_GENERATOR_WMIN, generator?.passesThrough ?? true, unit),
      feed(FROM_VEHICLE_WMIN, false, unit, {
        maxW: vehicle?.outletW ?? 0,
        efficiency: vehicle?.efficiency ?? 1,
      }),
    ]),
  };
}

function compileGenerator(
  generator: GeneratorSpec,
  { units, strategies, person }: HouseholdSpec,
): CompiledGenerator {
  const line = fuelLineOf(generator);
  const fed = unitsFedBy(generator, units);
  return {
    spec: generator,
    line,
    mostLPerMinute: (line.noLoadLPerHour + (line.litresPerKWh * generator.ratedW) / 1000) / 60,
    surgeW: generator.surgeW ?? generator.ratedW,
    feeds: Uint8Array.from(units, (unit) => (fed.includes(unit) ? 1 : 0)),
    plans: strategies.map((s) => planGenerator(s.generator ?? generator.run, generator, person)),
  };
}

function feed(
  kind: number,
  passes: boolean,
  unit: UnitSpec,
  charger: { readonly maxW: number; readonly efficiency: number } = unit.charger ?? {
    maxW: 0,
    efficiency: 1,
  },
): Float64Array {
  const settings = new Float64Array(FEED_SETTINGS);
  settings[FEED_KIND] = kind;
  settings[FEED_PASSES] = passes ? 1 : 0;
  settings[FEED_CHARGER_W] = charger.maxW;
  settings[FEED_EFFICIENCY] = charger.efficiency;
  return settings;
}
