/** One row per (draw, alternative, strategy), held in columns. */

/** Why the runtime ended: the column `endCause` holds the position in this list. */
export { END_CAUSES, type EndCause } from '../step/end-causes.ts';

/**
 * Columns of an outcome row. Energies are sums over the whole horizon, Wh. Minutes count from the outage's start.
 * NaN means "did not happen" (and becomes null in tables and files); there is no other use of NaN.
 */
export const OUTCOME_COLUMNS = [
  'draw', // draw index
  'alternative', // position in study.alternatives
  'strategy', // position in study.strategies
  'startEpochMinute', // minutes since 1970-01-01T00:00Z
  'runtimeMinutes', // until tier 1 goes without; the horizon when censored; may be a fraction
  'censored', // 1 = still running at the horizon
  'endCause', // position in END_CAUSES
  'endUnit', // position in study.unitIds of the unit whose stop ended it; NaN when none did
  'firstShedMinute', // first minute a circuit was off by the strategy
  'first240LossMinute', // first minute without 240 V although some circuit needs it
  'firstBlackoutMinute', // first minute in which no unit is on
  'trips',
  'stageChanges', // times the set of circuits that are on changed
  'switchThrows', // circuits switched by hand or by the switch
  'servedTier1Wh',
  'servedTier2Wh',
  'servedTier3Wh',
  'servedTier4Wh',
  'servedTier5Wh',
  'unservedTier1Wh',
  'unservedTier2Wh',
  'unservedTier3Wh',
  'unservedTier4Wh',
  'unservedTier5Wh',
  'solarAvailableWh',
  'solarUsedWh',
  'solarStoredWh',
  'solarClippedWh',
  'solarCurtailedWh',
  'inverterLossWh', // conversion, idle and standby together
  'batteryLossWh', // charging, discharging, self-discharge
  'storedStartWh',
  'storedEndWh',
  'minutesUnit0Down', // by position in study.unitIds; NaN where the household has no such unit
  'minutesUnit1Down',
  'sourceInWh', // AC taken from the grid, a generator, a vehicle
  'chargerLossWh', // of it, lost in chargers
  'gridMinutes', // hours of grid in between, in minutes
  'generatorMinutes', // it ran
  'generatorStarts',
  'generatorTrips', // its breaker opened
  'fuelUsedL',
  'fuelGoneMinute', // tank and cans done; NaN = never
] as const;
/** Of them, those of a study that is only asked how long each run lasts; it has no columns of needs. */
export const RUNTIME_COLUMNS = [
  'draw',
  'alternative',
  'strategy',
  'runtimeMinutes',
  'censored',
  'endCause',
  'endUnit',
] as const satisfies readonly (typeof OUTCOME_COLUMNS)[number][];
export type OutcomeColumn = (typeof OUTCOME_COLUMNS)[number];

/**
 * Columnar rows; every array has length `length`. Besides the fixed columns there are two per need of the scenario:
 * `need:food:firstMinute` (NaN = never unmet) and `need:food:minutes`.
 */
export interface OutcomeRows {
  readonly length: number;
  readonly columns: Readonly<Record<string, Float64Array>>;
}
