/**
 * One unit through a run of steps while a source charges it and its inverter runs on. MODEL.md E4.
 *
 * The counterpart of step-unit.ts, on the same state, settings and parameters; what the source gave is kept beside.
 * The charger takes only what the bank has room for, after the panels: no source energy is ever curtailed.
 */
import {
  CHARGER_LOSS_WMIN,
  FEED_CHARGER_W,
  FEED_EFFICIENCY,
  FEED_KIND,
  SOURCE_STORED_WMIN,
  type FeedWatts,
} from './source-feed.ts';
import {
  BATTERY_LIMIT,
  CHARGED_WMIN,
  CROSSED,
  CURTAILED_WMIN,
  DISCHARGED_WMIN,
  DONE,
  EMPTY,
  LOSS_WMIN,
  OVERLOAD,
  OVERLOADED_MINUTES,
  SET_BASE_W,
  SET_CHARGE_LIMIT_W,
  SET_DOWN_WMIN,
  SET_DT,
  SET_FLOOR_WMIN,
  SET_IDLE_W,
  SET_LOAD_FROM,
  SET_ON,
  SET_START_W,
  SET_UP_WMIN,
  SET_WATCH,
  STORED_WMIN,
  SURGE,
} from './step-unit.ts';
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

/**
 * Steps a unit that a source only charges: its inverter carries its circuits, or it is down and the bank is charged.
 * The source makes up what the panels lack, then charges.
 *
 * @returns steps carried out; events as in step-unit.ts
 */
export function stepCharging(
  parameters: Float64Array,
  state: Float64Array,
  sums: Float64Array,
  settings: Float64Array,
  feed: Float64Array,
  watts: FeedWatts,
  feedFrom: number,
  solarW: Float32Array,
  solarFrom: number,
  loadW: Float32Array,
  startExtraW: Float32Array,
  count: number,
  event: Int32Array,
): number {
  const on = settings[SET_ON]! !== 0;
  const watch = settings[SET_WATCH]! !== 0;
  const idleW = settings[SET_IDLE_W]!;
  const baseW = settings[SET_BASE_W]!;
  const dt = settings[SET_DT]!;
  const k1 = parameters[LOSS_PER_W]!;
  const k2 = parameters[LOSS_PER_W2]!;
  const capacity = parameters[CAPACITY_WMIN]!;
  const storedPerW = parameters[CHARGE_EFFICIENCY]! * dt;
  const drawnPerW = dt / parameters[DISCHARGE_EFFICIENCY]!;
  const floor = settings[SET_FLOOR_WMIN]!;
  const chargeLimitW = settings[SET_CHARGE_LIMIT_W]!;
  const efficiency = feed[FEED_EFFICIENCY]!;
  const down = settings[SET_DOWN_WMIN]!;
  const up = settings[SET_UP_WMIN]!;
  const kind = feed[FEED_KIND]!;
  const loadFrom = settings[SET_LOAD_FROM]!;
  let stored = state[STORED_WMIN]!;
  let ended = DONE;
  let k = 0;
  while (k < count) {
    const p = baseW + loadW[loadFrom + k]!;
    const loss = idleW + p * (k1 + k2 * p);
    const offered = efficiency * Math.min(watts.steadyW[feedFrom + k]!, feed[FEED_CHARGER_W]!);
    const lacking = p + loss - solarW[solarFrom + k]!;
    if (watch) {
      const startW = Math.max(startExtraW[loadFrom + k]!, k === 0 ? settings[SET_START_W]! : 0);
      if (p + startW > parameters[SURGE_W]!) ended = SURGE;
      else if (p > parameters[CONTINUOUS_W]! && state[OVERLOADED_MINUTES]! >= parameters[OVERLOAD_MINUTES]!)
        ended = OVERLOAD;
      else if (lacking - offered > parameters[DISCHARGE_LIMIT_W]! && on) ended = BATTERY_LIMIT;
      if (ended !== DONE) break;
    }
    let given: number; // by the source, after its charger
    let lost = loss;
    if (lacking > offered) {
      given = offered;
      const need = lacking - offered;
      const drawn = need * drawnPerW;
      if (stored - drawn >= floor) {
        stored -= drawn;
        state[DISCHARGED_WMIN] = state[DISCHARGED_WMIN]! + need * dt;
      } else if (on) {
        ended = EMPTY;
        break;
      } else {
        const left = stored > floor ? stored - floor : 0; // standby, as in step-unit.ts
        stored -= left;
        state[DISCHARGED_WMIN] = state[DISCHARGED_WMIN]! + (left / drawnPerW) * dt;
        lost += left / drawnPerW - need;
      }
    } else {
      const net = lacking < 0 ? -lacking : 0;
      const toLoad = lacking > 0 ? lacking : 0;
      const room = Math.max(0, (capacity - stored) / storedPerW);
      const mostW = room < chargeLimitW ? room : chargeLimitW;
      const fromSun = net < mostW ? net : mostW;
      const charge = Math.min(offered - toLoad, mostW - fromSun);
      const c = fromSun + charge;
      given = toLoad + charge;
      stored = mostW === room && c === room ? capacity : stored + c * storedPerW;
      state[CHARGED_WMIN] = state[CHARGED_WMIN]! + c * dt;
      state[CURTAILED_WMIN] = state[CURTAILED_WMIN]! + (net - fromSun) * dt;
      sums[SOURCE_STORED_WMIN] = sums[SOURCE_STORED_WMIN]! + charge * dt;
    }
    state[LOSS_WMIN] = state[LOSS_WMIN]! + lost * dt;
    sums[kind] = sums[kind]! + (given / efficiency) * dt;
    sums[CHARGER_LOSS_WMIN] = sums[CHARGER_LOSS_WMIN]! + (given / efficiency - given) * dt;
    if (watch)
      state[OVERLOADED_MINUTES] = p > parameters[CONTINUOUS_W]! ? state[OVERLOADED_MINUTES]! + dt : 0;
    k++;
    if (stored < down || stored >= up) {
      ended = CROSSED;
      break;
    }
  }
  if (!watch) state[OVERLOADED_MINUTES] = 0;
  state[STORED_WMIN] = stored;
  event[0] = ended;
  return k;
}
