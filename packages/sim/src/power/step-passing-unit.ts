/**
 * One unit through a run of steps while its circuits run off a source. MODEL.md E4.
 *
 * The counterpart of step-unit.ts, on the same state, settings and parameters; what the source gave is kept beside.
 * The charger takes only what the bank has room for, after the panels: no source energy is ever curtailed.
 */
import {
  CHARGER_LOSS_WMIN,
  FEED_CHARGER_W,
  FEED_EFFICIENCY,
  FEED_KIND,
  SOURCE_OVERLOAD,
  SOURCE_STORED_WMIN,
  type FeedWatts,
} from './source-feed.ts';
import {
  CHARGED_WMIN,
  CROSSED,
  CURTAILED_WMIN,
  DONE,
  LOSS_WMIN,
  OVERLOADED_MINUTES,
  SET_BASE_W,
  SET_CHARGE_LIMIT_W,
  SET_DOWN_WMIN,
  SET_DT,
  SET_IDLE_W,
  SET_LOAD_FROM,
  SET_START_W,
  SET_UP_WMIN,
  STORED_WMIN,
} from './step-unit.ts';
import { CAPACITY_WMIN, CHARGE_EFFICIENCY } from './unit-parameters.ts';

/**
 * Steps a unit whose circuits run straight off the source. Its inverter idles on the source and converts nothing; its
 * panels charge the bank, then the charger adds what the source has left. Ratings of the unit are not looked at: the
 * watts go past its inverter.
 *
 * @returns steps carried out; event[0] is DONE, CROSSED or SOURCE_OVERLOAD
 */
export function stepPassing(
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
  const idleW = settings[SET_IDLE_W]!;
  const baseW = settings[SET_BASE_W]!;
  const dt = settings[SET_DT]!;
  const capacity = parameters[CAPACITY_WMIN]!;
  const storedPerW = parameters[CHARGE_EFFICIENCY]! * dt;
  const chargeLimitW = settings[SET_CHARGE_LIMIT_W]!;
  const chargerW = feed[FEED_CHARGER_W]!;
  const efficiency = feed[FEED_EFFICIENCY]!;
  const down = settings[SET_DOWN_WMIN]!;
  const up = settings[SET_UP_WMIN]!;
  const kind = feed[FEED_KIND]!;
  const { steadyW, surgeW } = watts;
  const loadFrom = settings[SET_LOAD_FROM]!;
  let stored = state[STORED_WMIN]!;
  let ended = DONE;
  let k = 0;
  while (k < count) {
    const p = baseW + loadW[loadFrom + k]!;
    const passed = p + idleW;
    const left = steadyW[feedFrom + k]! - passed;
    const startW = Math.max(startExtraW[loadFrom + k]!, k === 0 ? settings[SET_START_W]! : 0);
    if (left < 0 || passed + startW > surgeW[feedFrom + k]!) {
      ended = SOURCE_OVERLOAD;
      break;
    }
    const s = solarW[solarFrom + k]!;
    const room = Math.max(0, (capacity - stored) / storedPerW);
    const mostW = room < chargeLimitW ? room : chargeLimitW;
    const fromSun = s < mostW ? s : mostW;
    const offered = efficiency * (left < chargerW ? left : chargerW);
    const wanted = mostW - fromSun;
    const charge = offered < wanted ? offered : wanted;
    const c = fromSun + charge;
    stored = mostW === room && c === room ? capacity : stored + c * storedPerW;
    state[CHARGED_WMIN] = state[CHARGED_WMIN]! + c * dt;
    state[CURTAILED_WMIN] = state[CURTAILED_WMIN]! + (s - fromSun) * dt;
    state[LOSS_WMIN] = state[LOSS_WMIN]! + idleW * dt;
    sums[kind] = sums[kind]! + (passed + charge / efficiency) * dt;
    sums[SOURCE_STORED_WMIN] = sums[SOURCE_STORED_WMIN]! + charge * dt;
    sums[CHARGER_LOSS_WMIN] = sums[CHARGER_LOSS_WMIN]! + (charge / efficiency - charge) * dt;
    k++;
    if (stored < down || stored >= up) {
      ended = CROSSED;
      break;
    }
  }
  state[STORED_WMIN] = stored;
  state[OVERLOADED_MINUTES] = 0;
  event[0] = ended;
  return k;
}
