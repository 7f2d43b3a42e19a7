/**
 * One unit through a run of steps while a source charges it and its inverter runs on. MODEL.md E4.
 *
 * The counterpart of step-unit.ts, on the same state, settings and parameters; what the source gave is kept beside.
 * The charger takes only what the bank has room for, after the panels: no source energy is ever curtailed.
 */
import { fedSteps } from './fed-steps.ts';
import type { LoadBlocks, SolarMinutes } from './hour-figures.ts';
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
  CROSSED,
  DONE,
  EMPTY,
  OVERLOAD,
  SURGE,
  type UnitSettings,
  type UnitState,
} from './step-unit.ts';
import type { UnitParameters } from './unit-parameters.ts';

/**
 * Steps a unit that a source only charges: its inverter carries its circuits, or it is down and the bank is charged.
 * The source makes up what the panels lack, then charges.
 *
 * @returns steps carried out; events as in step-unit.ts
 */
export function stepCharging(
  parameters: UnitParameters,
  state: UnitState,
  sums: Float64Array,
  settings: UnitSettings,
  feed: Float64Array,
  watts: FeedWatts,
  cold: Float64Array,
  solar: SolarMinutes,
  loads: LoadBlocks,
  blocks: Int32Array,
  from: number,
  count: number,
  event: Int32Array,
): number {
  const on = settings.on;
  const idleW = settings.idleW;
  const { loadFrom, startFrom, feedFrom, baseW, storedPerW, chargeLimitW, floor, up } = fedSteps(
    parameters,
    settings,
    cold,
    loads,
    blocks,
    from,
  );
  const dt = settings.dt;
  const k1 = parameters.lossPerW;
  const k2 = parameters.lossPerW2;
  const capacity = parameters.capacityWmin;
  const drawnPerW = dt / parameters.dischargeEfficiency;
  const efficiency = feed[FEED_EFFICIENCY]!;
  const down = settings.downWmin;
  const kind = feed[FEED_KIND]!;
  let stored = state.storedWmin;
  let ended = DONE;
  let k = 0;
  while (k < count) {
    const p = baseW + loads.watts[loadFrom + k]!;
    const loss = idleW + p * (k1 + k2 * p);
    const offered = efficiency * Math.min(watts.steadyW[feedFrom + k]!, feed[FEED_CHARGER_W]!);
    const lacking = p + loss - solar.usableW[from + k]!;
    const startW = Math.max(loads.startExtraW[startFrom + k]!, k === 0 ? settings.startW : 0);
    if (p + startW > parameters.surgeW) ended = SURGE;
    else if (p > parameters.continuousW && state.overloadedMinutes >= parameters.overloadMinutes)
      ended = OVERLOAD;
    else if (lacking - offered > parameters.dischargeLimitW && on) ended = BATTERY_LIMIT;
    if (ended !== DONE) break;
    let given: number; // by the source, after its charger
    let lost = loss;
    if (lacking > offered) {
      given = offered;
      const need = lacking - offered;
      const drawn = need * drawnPerW;
      if (stored - drawn >= floor) {
        stored -= drawn;
        state.dischargedWmin = state.dischargedWmin + need * dt;
      } else if (on) {
        ended = EMPTY;
        break;
      } else {
        const left = stored > floor ? stored - floor : 0; // standby, as in step-unit.ts
        stored -= left;
        state.dischargedWmin = state.dischargedWmin + (left / drawnPerW) * dt;
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
      state.chargedWmin = state.chargedWmin + c * dt;
      state.curtailedWmin = state.curtailedWmin + (net - fromSun) * dt;
      sums[SOURCE_STORED_WMIN] = sums[SOURCE_STORED_WMIN]! + charge * dt;
    }
    state.lossWmin = state.lossWmin + lost * dt;
    sums[kind] = sums[kind]! + (given / efficiency) * dt;
    sums[CHARGER_LOSS_WMIN] = sums[CHARGER_LOSS_WMIN]! + (given / efficiency - given) * dt;
    state.overloadedMinutes = p > parameters.continuousW ? state.overloadedMinutes + dt : 0;
    k++;
    if (stored < down || stored >= up) {
      ended = CROSSED;
      break;
    }
  }
  state.storedWmin = stored;
  event[0] = ended;
  return k;
}
