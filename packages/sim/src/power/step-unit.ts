/**
 * One unit through a run of steps: inverter, solar input and bank. MODEL.md §6–7.
 *
 * The innermost loop of the library: no allocation, no calls, all state in locals. `Wmin` is watt-minutes.
 */
import {
  CAPACITY_WMIN,
  CHARGE_EFFICIENCY,
  CONTINUOUS_W,
  DISCHARGE_EFFICIENCY,
  DISCHARGE_LIMIT_W,
  LOSS_PER_W,
  LOSS_PER_W2,
  OVERLOAD_MINUTES,
  SURGE_W,
} from './unit-parameters.ts';

/** Positions in a unit's state array. All but the first and last are sums since the outage's start. */
export const STORED_WMIN = 0;
export const LOSS_WMIN = 1; // inverter: conversion, idle, standby
export const CHARGED_WMIN = 2; // into the bank, at its terminals
export const CURTAILED_WMIN = 3; // solar that found no room
export const DISCHARGED_WMIN = 4; // out of the bank, at its terminals
export const SELF_DISCHARGED_WMIN = 5;
export const OVERLOADED_MINUTES = 6; // minutes in a row above the continuous rating
export const UNIT_STATE = 7;

/** Positions in the settings of one call. */
export const SET_ON = 0; // 1 = the inverter is on, 0 = off or asleep (its panels still charge the bank)
export const SET_IDLE_W = 1; // idle watts when on, standby watts when off
export const SET_FLOOR_WMIN = 2; // the bank is not drawn below this
export const SET_CHARGE_LIMIT_W = 3; // 0 when too cold to charge
export const SET_DOWN_WMIN = 4; // stop after a step that leaves the bank below this …
export const SET_UP_WMIN = 5; // … or at this or above
export const SET_DT = 6; // length of each step, minutes; 1 but for the parts of a minute in which something stopped
export const SET_WATCH = 7; // 0 when no step of this call can exceed a rating: the ratings are then not looked at
export const SET_BASE_W = 8; // AC watts asked of the unit in every step of the call, beside `loadW`
export const SET_START_W = 9; // extra watts of a start in the first step, beside `startExtraW`
export const SET_LOAD_FROM = 10; // where in `loadW` and `startExtraW` the first step is
/** What bounds the watts of the hour, so that many steps can be taken at once: see step-at-once.ts. */
export const SET_LEAST_W = 11; // the least of `loadW`, and the most
export const SET_MOST_W = 12;
export const SET_PEAK_START_W = 13; // the most that `loadW` and `startExtraW` come to in one step; read if watched
export const SET_SOLAR_LEAST_W = 14;
export const SET_SOLAR_MOST_W = 15;
export const SETTINGS = 16;

/** How a call ended, left in `event[0]`. The step at which it stopped is not carried out, except for CROSSED. */
export const DONE = 0;
export const CROSSED = 1; // a level was crossed by the last step carried out
export const EMPTY = 2; // the bank would fall below its floor
export const OVERLOAD = 3; // above the continuous rating for longer than the unit bears
export const SURGE = 4; // a start above the surge rating
export const BATTERY_LIMIT = 5; // more than the modules may deliver

/**
 * Steps the unit through `count` steps; one only when they are shorter than a minute.
 *
 * @param parameters see unit-parameters.ts
 * @param state see above; changed in place
 * @param settings see above
 * @param solarW usable DC solar watts, read from `solarFrom`
 * @param loadW AC watts asked of the unit beside the base, one value per step, read from SET_LOAD_FROM
 * @param startExtraW largest extra watts of a start in each step, likewise; not read unless ratings are watched
 * @param event event[0] tells how the call ended
 * @returns steps carried out, `count` when nothing stopped it
 */
export function stepUnit(
  parameters: Float64Array,
  state: Float64Array,
  settings: Float64Array,
  solarW: Float32Array,
  solarFrom: number,
  loadW: Float32Array,
  startExtraW: Float32Array,
  count: number,
  event: Int32Array,
): number {
  const on = settings[SET_ON]! !== 0;
  const idleW = settings[SET_IDLE_W]!;
  const baseW = settings[SET_BASE_W]!;
  const k1 = parameters[LOSS_PER_W]!;
  const k2 = parameters[LOSS_PER_W2]!;
  const capacity = parameters[CAPACITY_WMIN]!;
  const dt = settings[SET_DT]!;
  const storedPerW = parameters[CHARGE_EFFICIENCY]! * dt;
  const drawnPerW = dt / parameters[DISCHARGE_EFFICIENCY]!;
  const floor = settings[SET_FLOOR_WMIN]!;
  const chargeLimitW = settings[SET_CHARGE_LIMIT_W]!;
  const down = settings[SET_DOWN_WMIN]!;
  const up = settings[SET_UP_WMIN]!;
  const watch = settings[SET_WATCH]! !== 0;
  const loadFrom = settings[SET_LOAD_FROM]! | 0;

  // Sums are carried on, not added up per call, so that where calls end changes no bit; a part of a minute is scaled.
  const whole = dt === 1;
  let lost = whole ? state[LOSS_WMIN]! : 0;
  let charged = whole ? state[CHARGED_WMIN]! : 0;
  let curtailed = whole ? state[CURTAILED_WMIN]! : 0;
  let discharged = whole ? state[DISCHARGED_WMIN]! : 0;
  let stored = state[STORED_WMIN]!;
  let overloaded = watch ? state[OVERLOADED_MINUTES]! : 0;
  let ended = DONE;
  let k = 0;

  while (k < count) {
    const p = baseW + loadW[loadFrom + k]!;
    const loss = idleW + p * (k1 + k2 * p);
    const net = solarW[solarFrom + k]! - p - loss;
    if (watch) {
      const startW = k === 0 ? settings[SET_START_W]! : 0;
      const extraW = startExtraW[loadFrom + k]!;
      if (p + (extraW > startW ? extraW : startW) > parameters[SURGE_W]!) {
        ended = SURGE;
        break;
      }
      if (p > parameters[CONTINUOUS_W]! && overloaded >= parameters[OVERLOAD_MINUTES]!) {
        ended = OVERLOAD;
        break;
      }
      if (-net > parameters[DISCHARGE_LIMIT_W]! && on) {
        ended = BATTERY_LIMIT;
        break;
      }
    }
    if (net >= 0) {
      let c = net < chargeLimitW ? net : chargeLimitW;
      const gain = c * storedPerW;
      if (gain < capacity - stored) stored += gain;
      else {
        c = (capacity - stored) / storedPerW;
        stored = capacity; // full is full to the last bit: somebody may wait for it
      }
      charged += c;
      curtailed += net - c;
      lost += loss;
    } else {
      const drawn = -net * drawnPerW;
      if (stored - drawn >= floor) {
        stored -= drawn;
        discharged -= net;
        lost += loss;
      } else if (on) {
        ended = EMPTY;
        break;
      } else {
        // Standby that the panels do not feed comes from what is left above the floor, and is not drawn beyond that.
        if (stored > floor) {
          const left = stored - floor;
          stored -= left;
          discharged += left / drawnPerW;
          lost += loss + net + left / drawnPerW;
        } else lost += loss + net;
      }
    }
    if (watch) overloaded = p > parameters[CONTINUOUS_W]! ? overloaded + dt : 0; // only once the step is carried out
    k++;
    if (stored < down || stored >= up) {
      ended = CROSSED;
      break;
    }
  }

  state[STORED_WMIN] = stored;
  state[LOSS_WMIN] = whole ? lost : state[LOSS_WMIN]! + lost * dt;
  state[CHARGED_WMIN] = whole ? charged : state[CHARGED_WMIN]! + charged * dt;
  state[CURTAILED_WMIN] = whole ? curtailed : state[CURTAILED_WMIN]! + curtailed * dt;
  state[DISCHARGED_WMIN] = whole ? discharged : state[DISCHARGED_WMIN]! + discharged * dt;
  state[OVERLOADED_MINUTES] = overloaded;
  event[0] = ended;
  return k;
}

/** Share of one more step that the bank can carry before it reaches its floor, 0…1. Same arithmetic as the loop. */
export function stepShareUntilEmpty(
  parameters: Float64Array,
  state: Float64Array,
  settings: Float64Array,
  solarW: number,
  loadW: number,
): number {
  const loss = settings[SET_IDLE_W]! + loadW * (parameters[LOSS_PER_W]! + parameters[LOSS_PER_W2]! * loadW);
  const needW = loadW + loss - solarW;
  const drawn = (needW * settings[SET_DT]!) / parameters[DISCHARGE_EFFICIENCY]!;
  const left = state[STORED_WMIN]! - settings[SET_FLOOR_WMIN]!;
  return left <= 0 || drawn <= 0 ? 0 : Math.min(1, left / drawn);
}

/**
 * Whether steps with at most `peakW`, and at most `peakStartW` in the seconds of a start, could exceed a rating. If
 * they cannot, the loop need not look; minutes of overload in a row are over too.
 */
export function mayExceedRating(
  parameters: Float64Array,
  idleW: number,
  peakW: number,
  peakStartW: number,
): boolean {
  const peakNeedW = peakW + idleW + peakW * (parameters[LOSS_PER_W]! + parameters[LOSS_PER_W2]! * peakW);
  return (
    peakStartW > parameters[SURGE_W]! ||
    peakW > parameters[CONTINUOUS_W]! ||
    peakNeedW > parameters[DISCHARGE_LIMIT_W]!
  );
}
