/** How the numbers of a thermostatic appliance lie in the arrays that the minute loop reads. */
import { log } from '../portable/elementary.ts';
import type { ThermostatWant } from '../usage/usage-draw.ts';

/** Longest stretch worked out at once, minutes. */
export const REACH_MINUTES = 240;
/** Furthest that the next switching is looked for, minutes. */
export const LOOK_MINUTES = 1440;
/** Surroundings are looked at every hour and taken anew when they moved by more than this, °C. */
export const AROUND_STEP_C = 0.05;

/** Positions in the parameters of one thermostat. */
export const HIGH = 0; // starts calling above this (signed °C)
export const LOW = 1; // stops calling below this
export const DRIFT = 2; // share of the distance to the surroundings covered in a minute: 1 / time constant
export const PULL = 3; // °C a minute that running moves it
export const DEPTH = 4; // pull / drift: how far below its surroundings it could hold itself
export const RUNNING_W = 5;
export const START_EXTRA_W = 6;
export const GRACE_MINUTES = 7;
export const LIMIT = 8; // signed °C, Infinity when it has none
export const OFFSET = 9; // signed °C added to the surroundings
export const SIGN = 10;
export const PER_LOG = 11; // minutes per unit of -ln (1 - drift)^k
export const POWERS = 12; // (1 - drift)^k for k = 0…REACH_MINUTES
export const THERMOSTAT_PARAMETERS = POWERS + REACH_MINUTES + 1;

/** Positions in its state. Sums are up to the anchor: the last moment at which it switched, or power came or went. */
export const ANCHOR_Y = 0; // signed °C at the anchor
export const ANCHOR_AT = 1; // its moment, minutes from the outage's start
export const CALLING = 2;
export const POWERED = 3;
export const NEXT_AT = 4; // the minute that begins beyond the band, or at which it is looked at anew
export const NEXT_Y = 5; // signed °C then
export const NEXT_MOST = 6; // the most on the way there, at the full hours between
export const START_AT = 7; // the minute in which its present run began; -1 when it was running all along
export const RUN_BEFORE = 8;
export const WANTED_BEFORE = 9; // minutes of running wanted
export const WAIT_BEFORE = 10; // minutes it called without power since the power went
export const GRACE_PASSED_AT = 11; // first moment the wait exceeded the grace, minutes from the start; -1 = not yet
export const BEYOND_MINUTES = 12; // minutes past its limit
export const BEYOND_FIRST = 13; // the first of them; -1 = none
export const WAITED_TOO_LONG_MINUTES = 14; // all minutes of waiting beyond the grace
export const THERMOSTAT_STATE = 15;

/** Writes the parameters of one thermostat from position `at`. */
export function thermostatParameters(
  want: ThermostatWant,
  graceMinutes: number,
  into: Float64Array,
  at: number,
): void {
  const { sign, setC, bandC } = want;
  const drift = 1 / want.timeConstantMinutes;
  into[at + HIGH] = sign * setC + bandC;
  into[at + LOW] = sign * setC - bandC;
  into[at + DRIFT] = drift;
  into[at + PULL] = want.pullCPerMinute;
  into[at + DEPTH] = want.pullCPerMinute / drift;
  into[at + RUNNING_W] = want.runningW;
  into[at + START_EXTRA_W] = want.startExtraW;
  into[at + GRACE_MINUTES] = graceMinutes;
  into[at + LIMIT] = want.limitC === undefined ? Infinity : sign * want.limitC;
  into[at + OFFSET] = sign * want.surroundingsOffsetC;
  into[at + SIGN] = sign;
  into[at + PER_LOG] = -1 / log(1 - drift);
  let power = 1;
  for (let k = 0; k <= REACH_MINUTES; k++) {
    into[at + POWERS + k] = power;
    power *= 1 - drift;
  }
}
