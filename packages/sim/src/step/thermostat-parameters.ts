/** One thermostatic appliance as numbers: what does not change about it. MODEL.md §Usage, U9. */
import { log } from '../portable/elementary.ts';
import type { ThermostatWant } from '../usage/usage-draw.ts';

/** Longest stretch worked out at once, minutes. */
export const REACH_MINUTES = 240;
/** Furthest that the next switching is looked for, minutes. */
export const LOOK_MINUTES = 1440;
/** Surroundings are looked at every hour and taken anew when they moved by more than this, °C. */
export const AROUND_STEP_C = 0.05;

/** Temperatures are signed: see thermostat-stretch.ts. */
export interface ThermostatParameters {
  /** Starts calling above this, °C; stops below that. */
  readonly high: number;
  readonly low: number;
  /** Share of the distance to the surroundings covered in a minute: 1 / time constant. */
  readonly drift: number;
  /** Pull / drift: how far below its surroundings it could hold itself, °C. */
  readonly depth: number;
  readonly runningW: number;
  readonly startExtraW: number;
  readonly graceMinutes: number;
  /** Infinity when it has none. */
  readonly limit: number;
  /** Added to the surroundings, °C. */
  readonly offset: number;
  readonly sign: number;
  /** Minutes per unit of -ln (1 - drift)^k. */
  readonly perLog: number;
  /** (1 - drift)^k for k = 0…REACH_MINUTES. */
  readonly powers: Float64Array;
}

export function thermostatParameters(want: ThermostatWant, graceMinutes: number): ThermostatParameters {
  const { sign, setC, bandC } = want;
  const drift = 1 / want.timeConstantMinutes;
  return {
    high: sign * setC + bandC,
    low: sign * setC - bandC,
    drift,
    depth: want.pullCPerMinute / drift,
    runningW: want.runningW,
    startExtraW: want.startExtraW,
    graceMinutes,
    limit: want.limitC === undefined ? Infinity : sign * want.limitC,
    offset: sign * want.surroundingsOffsetC,
    sign,
    perLog: -1 / log(1 - drift),
    powers: powersOf(1 - drift),
  };
}

function powersOf(kept: number): Float64Array {
  const powers = new Float64Array(REACH_MINUTES + 1);
  let power = 1;
  for (let k = 0; k <= REACH_MINUTES; k++) {
    powers[k] = power;
    power *= kept;
  }
  return powers;
}
