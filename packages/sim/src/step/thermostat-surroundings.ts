/** What each thermostatic appliance stands in, hour by hour: once per draw. MODEL.md §Usage, U9. */
import { MINUTES_PER_HOUR } from '../power/hour-figures.ts';
import { AROUND_STEP_C, type ThermostatParameters } from './thermostat-parameters.ts';
import { createCourse, type ThermostatCourse } from './thermostat-state.ts';

/** Far beyond any horizon, minutes. */
export const NEVER_MINUTE = 1e9;

/** One thermostatic appliance of a draw: the same for every run. */
export interface ThermostatPlace {
  readonly parameters: ThermostatParameters;
  /** Signed surroundings of each hour, °C, taken anew when they have moved far enough. */
  readonly around: Float64Array;
  /** Per hour: the next full hour, in minutes, at which they are taken anew. */
  readonly movesAt: Int32Array;
  /** As long as power never fails it from the outage's first moment on; no entries yet when nobody has asked. */
  readonly unbroken: ThermostatCourse;
  /** Lists that runs have done with, for the next to fill. */
  readonly free: ThermostatCourse[];
}

export function createPlace(parameters: ThermostatParameters, hours: number): ThermostatPlace {
  return {
    parameters,
    around: new Float64Array(hours),
    movesAt: new Int32Array(hours),
    unbroken: createCourse(),
    free: [],
  };
}

/** @param surroundingsC °C of its place in every minute */
export function fillPlace(place: ThermostatPlace, surroundingsC: Float32Array): void {
  const { parameters, around, movesAt } = place;
  place.unbroken.count = 0;
  const sign = parameters.sign;
  const offset = parameters.offset;
  let taken = sign * surroundingsC[0]! + offset;
  for (let h = 0; h < around.length; h++) {
    const there = sign * surroundingsC[h * MINUTES_PER_HOUR]! + offset;
    if (Math.abs(there - taken) > AROUND_STEP_C) taken = there;
    around[h] = taken;
  }
  let next = NEVER_MINUTE;
  for (let h = around.length - 1; h >= 0; h--) {
    movesAt[h] = next;
    if (h > 0 && around[h] !== around[h - 1]) next = h * MINUTES_PER_HOUR;
  }
}
