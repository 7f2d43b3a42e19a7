/** A scenario with nothing left to look up: what a study runs on, what a page carries, what the hash is taken of. */
import type { LadderPlan } from './ladder-plan.ts';
import type { ApplianceSpec, CheckedScenario, CircuitSpec } from './schema.ts';

/** Twelve monthly values each, January first. See `MonthlyNormals` fields for units. */
export interface MonthlyNormals {
  readonly clearnessMean: readonly number[];
  readonly clearnessSd?: readonly number[] | undefined;
  readonly clearnessLag1?: readonly number[] | undefined;
  readonly dryBulbMeanC: readonly number[];
  readonly dryBulbDailyRangeC?: readonly number[] | undefined;
  readonly dryBulbSdC?: readonly number[] | undefined;
  readonly dryBulbLag1?: readonly number[] | undefined;
  readonly clearnessDryBulbCorrelation?: readonly number[] | undefined;
}

/**
 * An hourly weather year: 8,760 values each, hour-ending, local standard time, hour 1 of 1 January first,
 * no 29 February. Irradiance is the mean over the hour, W/m²; dry-bulb (°C) and wind (m/s) are at its end.
 */
export interface WeatherYear {
  readonly name: string;
  readonly utcOffsetHours: number;
  /** Where it was measured, if the file says: its sun is then that place's, not the site's. */
  readonly latitudeDeg?: number | undefined;
  readonly longitudeDeg?: number | undefined;
  readonly ghiWm2: readonly number[];
  readonly dniWm2: readonly number[];
  readonly dhiWm2: readonly number[];
  readonly dryBulbC: readonly number[];
  readonly windMs: readonly number[];
}

/** Where the weather of the draws comes from: twelve monthly values, or an hourly year. */
export type WeatherSource =
  | { readonly kind: 'normals'; readonly name: string; readonly monthly: MonthlyNormals }
  | { readonly kind: 'year'; readonly year: WeatherYear };

/** Watts at a regular interval, repeated to the horizon; the first value starts at local midnight. */
export interface MeasuredProfile {
  readonly intervalMinutes: number;
  readonly watts: readonly number[];
}

export type Appliance =
  | Exclude<ApplianceSpec, { kind: 'measured' }>
  | (Extract<ApplianceSpec, { kind: 'measured' }> & { readonly profile: MeasuredProfile });

export type Circuit = Omit<CircuitSpec, 'appliances'> & { readonly appliances: readonly Appliance[] };

/** The part of a scenario that an alternative may change. */
export type HouseholdSpec = Pick<
  CheckedScenario,
  'units' | 'pair' | 'sources' | 'usage' | 'person' | 'strategies'
> & {
  readonly circuits: readonly Circuit[];
};

/** One version of the household: the first is the one that the others are compared with. */
export interface AlternativeSpec {
  readonly id: string;
  readonly title: string;
  readonly household: HouseholdSpec;
}

/** Weather with its twelve numbers or its year inside. */
export type WeatherWithSource = Omit<CheckedScenario['weather'], 'normals' | 'monthly' | 'yearFile'> & {
  readonly source: WeatherSource;
};

/** A ladder and the household that it leads to parts of: the one described, everything there. */
export interface Ladder extends LadderPlan {
  readonly household: HouseholdSpec;
}

/** A scenario with nothing left to look up: what a study runs on, what a page carries, what the hash is taken of. */
export type Scenario = Pick<
  CheckedScenario,
  'title' | 'site' | 'outage' | 'prices' | 'notes' | 'unknowns' | 'needs' | 'outageLengths'
> & {
  readonly weather: WeatherWithSource;
  readonly alternatives: readonly AlternativeSpec[];
  readonly ladder?: Ladder | undefined;
};
