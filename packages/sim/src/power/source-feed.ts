/** A source at a unit's AC input, as numbers: what it gives, and what it has given. MODEL.md E4. */

/** Positions in a unit's sums of what sources gave; watt-minutes since the outage's start. */
export const FROM_GRID_WMIN = 0; // AC taken from each kind of source
export const FROM_GENERATOR_WMIN = 1;
export const FROM_VEHICLE_WMIN = 2;
export const SOURCE_STORED_WMIN = 3; // of it, into the bank, at its terminals
export const CHARGER_LOSS_WMIN = 4; // of it, lost in the charger
export const SOURCE_SUMS = 5;

/** Positions in the settings of a feed. */
export const FEED_KIND = 0; // FROM_GRID_WMIN, FROM_GENERATOR_WMIN or FROM_VEHICLE_WMIN
export const FEED_PASSES = 1; // 1 = circuits run off the source; 0 = it only charges, and the inverter runs on
export const FEED_CHARGER_W = 2; // most AC watts of the charger
export const FEED_EFFICIENCY = 3; // from the source's AC into the unit
export const FEED_SETTINGS = 4;

/** Beside the events of step-unit.ts: the source cannot carry the unit's circuits in this step, or a start. */
export const SOURCE_OVERLOAD = 6;

/**
 * Share of a generator's watts that each unit it feeds has: a 240 V set gives half to each leg; a 120 V one all to its one
 * unit, or half to each charger.
 */
export function generatorShare(volts: 120 | 240, fedUnits: number): number {
  return volts === 240 ? 0.5 : 1 / fedUnits;
}

/** What a feed gives in each step, read from a given one on: steady watts, and watts for the seconds of a start. */
export interface FeedWatts {
  readonly steadyW: Float64Array;
  readonly surgeW: Float64Array;
}
