/**
 * One unit through many steps of a minute at once, where the same thing happens in every one of them. MODEL.md §7.
 *
 * The rule of a step is that of step-unit.ts. While its net power keeps one sign and meets no limit on the way, the
 * steps only add up, and what they come to follows from the sums of watts and of their squares: nights, clear hours,
 * full banks and banks that lie empty take a few operations each. Everything else is stepped minute by minute.
 */
import {
  CHARGED_WMIN,
  CURTAILED_WMIN,
  DISCHARGED_WMIN,
  DONE,
  LOSS_WMIN,
  OVERLOADED_MINUTES,
  SET_BASE_W,
  SET_CHARGE_LIMIT_W,
  SET_DOWN_WMIN,
  SET_FLOOR_WMIN,
  SET_IDLE_W,
  SET_LEAST_W,
  SET_MOST_W,
  SET_ON,
  SET_PEAK_START_W,
  SET_SOLAR_LEAST_W,
  SET_SOLAR_MOST_W,
  SET_START_W,
  SET_UP_WMIN,
  SET_WATCH,
  STORED_WMIN,
} from './step-unit.ts';
import {
  CAPACITY_WMIN,
  CHARGE_EFFICIENCY,
  CONTINUOUS_W,
  DISCHARGE_EFFICIENCY,
  DISCHARGE_LIMIT_W,
  LOSS_PER_W,
  LOSS_PER_W2,
  SURGE_W,
} from './unit-parameters.ts';

/**
 * Takes the unit through `count` steps of one minute, all in one hour; false, and nothing changed, where they must be
 * taken one by one: something may stop it on the way, or its bank charges in some and is drawn in others.
 *
 * @param parameters see unit-parameters.ts
 * @param state, settings see step-unit.ts
 * @param solarWmin usable DC watt-minutes before each minute, read at `solarFrom` and `count` further
 * @param loadWmin, loadW2min sums of `loadW` and of its squares before each step, read at `loadFrom` and `count` further
 * @param event event[0] is DONE when they were taken
 */
export function stepAtOnce(
  parameters: Float64Array,
  state: Float64Array,
  settings: Float64Array,
  solarWmin: Float64Array,
  solarFrom: number,
  loadWmin: Float64Array,
  loadW2min: Float64Array,
  loadFrom: number,
  count: number,
  event: Int32Array,
): boolean {
  const stored = state[STORED_WMIN]!;
  if (stored < settings[SET_DOWN_WMIN]! || stored >= settings[SET_UP_WMIN]!) return false;
  const idleW = settings[SET_IDLE_W]!;
  const baseW = settings[SET_BASE_W]!;
  const k1 = parameters[LOSS_PER_W]!;
  const k2 = parameters[LOSS_PER_W2]!;
  const leastW = baseW + settings[SET_LEAST_W]!;
  const mostW = baseW + settings[SET_MOST_W]!;
  const mostNetW = settings[SET_SOLAR_MOST_W]! - leastW - (idleW + leastW * (k1 + k2 * leastW));
  const leastNetW = settings[SET_SOLAR_LEAST_W]! - mostW - (idleW + mostW * (k1 + k2 * mostW));
  if (leastNetW < 0 && mostNetW >= 0) return false;
  if (settings[SET_WATCH]! !== 0 && mayStop(parameters, settings, mostW, leastNetW)) return false;

  const varyingWmin = loadWmin[loadFrom + count]! - loadWmin[loadFrom]!;
  const varyingW2min = loadW2min[loadFrom + count]! - loadW2min[loadFrom]!;
  const wmin = varyingWmin + baseW * count;
  const w2min = varyingW2min + baseW * (2 * varyingWmin + baseW * count);
  const loss = idleW * count + k1 * wmin + k2 * w2min;
  const net = solarWmin[solarFrom + count]! - solarWmin[solarFrom]! - wmin - loss;

  if (leastNetW >= 0) {
    const capacity = parameters[CAPACITY_WMIN]!;
    let charged = 0;
    if (stored < capacity) {
      const limitW = settings[SET_CHARGE_LIMIT_W]!;
      if (mostNetW <= limitW) charged = net;
      else if (leastNetW >= limitW) charged = limitW * count;
      else return false;
      const after = stored + charged * parameters[CHARGE_EFFICIENCY]!;
      if (after >= capacity || after >= settings[SET_UP_WMIN]!) return false;
      state[STORED_WMIN] = after;
      state[CHARGED_WMIN] = state[CHARGED_WMIN]! + charged;
    }
    state[CURTAILED_WMIN] = state[CURTAILED_WMIN]! + (net - charged);
    state[LOSS_WMIN] = state[LOSS_WMIN]! + loss;
  } else {
    const after = stored + net / parameters[DISCHARGE_EFFICIENCY]!;
    const floor = settings[SET_FLOOR_WMIN]!;
    if (after >= floor) {
      if (after < settings[SET_DOWN_WMIN]!) return false;
      state[STORED_WMIN] = after;
      state[DISCHARGED_WMIN] = state[DISCHARGED_WMIN]! - net;
      state[LOSS_WMIN] = state[LOSS_WMIN]! + loss;
    } else {
      if (settings[SET_ON]! !== 0 || stored > floor) return false;
      // Switched off, with nothing left above the floor: the panels' little goes into its standby.
      state[LOSS_WMIN] = state[LOSS_WMIN]! + loss + net;
    }
  }
  state[OVERLOADED_MINUTES] = 0;
  event[0] = DONE;
  return true;
}

/** Some step of the hour might exceed a rating with what hangs on the unit now. */
function mayStop(
  parameters: Float64Array,
  settings: Float64Array,
  mostW: number,
  leastNetW: number,
): boolean {
  const surgeW = parameters[SURGE_W]!;
  return (
    mostW > parameters[CONTINUOUS_W]! ||
    mostW + settings[SET_START_W]! > surgeW ||
    settings[SET_BASE_W]! + settings[SET_PEAK_START_W]! > surgeW ||
    -leastNetW > parameters[DISCHARGE_LIMIT_W]!
  );
}
