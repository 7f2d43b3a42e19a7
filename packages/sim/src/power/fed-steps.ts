/** What both ways of stepping a fed unit read before its steps: where they are, and what bounds its bank. */
import { COLD_CHARGE_LIMIT_W, COLD_FIGURES, loadPlace, type LoadBlocks } from './hour-figures.ts';
import { floorWmin, upWmin, type UnitSettings } from './step-unit.ts';
import type { UnitParameters } from './unit-parameters.ts';

/** Steps of one hour, `from` on. */
export interface FedSteps {
  /** Positions of the first step in `watts` and `startExtraW` of the loads, and in the feed's. */
  readonly loadFrom: number;
  readonly startFrom: number;
  readonly feedFrom: number;
  /** Watts asked for in every step, running thermostats included. */
  readonly baseW: number;
  /** Watt-minutes stored for each watt into the bank in a step. */
  readonly storedPerW: number;
  readonly chargeLimitW: number;
  /** The bank is not drawn below `floor`; the steps end at or above `up`. */
  readonly floor: number;
  readonly up: number;
}

/** The arguments are those of the steps. */
export function fedSteps(
  parameters: UnitParameters,
  settings: UnitSettings,
  cold: Float64Array,
  loads: LoadBlocks,
  blocks: Int32Array,
  from: number,
): FedSteps {
  const { hour, minuteOfHour, at, startAt, baseW } = loadPlace(loads, blocks, from);
  const floor = floorWmin(settings, cold, hour);
  return {
    loadFrom: at,
    startFrom: startAt,
    feedFrom: minuteOfHour,
    baseW: baseW + settings.runningW,
    storedPerW: parameters.chargeEfficiency * settings.dt,
    chargeLimitW: cold[hour * COLD_FIGURES + COLD_CHARGE_LIMIT_W]!,
    floor,
    up: upWmin(settings, floor, parameters.capacityWmin),
  };
}
