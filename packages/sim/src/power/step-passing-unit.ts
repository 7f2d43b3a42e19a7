/**
 * One unit through a run of steps while its circuits run off a source. MODEL.md E4.
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
  SOURCE_OVERLOAD,
  SOURCE_STORED_WMIN,
  type FeedWatts,
} from './source-feed.ts';
import { CROSSED, DONE, type UnitSettings, type UnitState } from './step-unit.ts';
import type { UnitParameters } from './unit-parameters.ts';

/**
 * Steps a unit whose circuits run straight off the source. Its inverter idles on the source and converts nothing; its
 * panels charge the bank, then the charger adds what the source has left. Ratings of the unit are not looked at: the
 * watts go past its inverter.
 *
 * @returns steps carried out; event[0] is DONE, CROSSED or SOURCE_OVERLOAD
 */
export function stepPassing(
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
  const idleW = settings.idleW;
  const { loadFrom, startFrom, feedFrom, baseW, storedPerW, chargeLimitW, up } = fedSteps(
    parameters,
    settings,
    cold,
    loads,
    blocks,
    from,
  );
  const dt = settings.dt;
  const capacity = parameters.capacityWmin;
  const chargerW = feed[FEED_CHARGER_W]!;
  const efficiency = feed[FEED_EFFICIENCY]!;
  const down = settings.downWmin;
  const kind = feed[FEED_KIND]!;
  const { steadyW, surgeW } = watts;
  let stored = state.storedWmin;
  let ended = DONE;
  let k = 0;
  while (k < count) {
    const p = baseW + loads.watts[loadFrom + k]!;
    const passed = p + idleW;
    const left = steadyW[feedFrom + k]! - passed;
    const startW = Math.max(loads.startExtraW[startFrom + k]!, k === 0 ? settings.startW : 0);
    if (left < 0 || passed + startW > surgeW[feedFrom + k]!) {
      ended = SOURCE_OVERLOAD;
      break;
    }
    const s = solar.usableW[from + k]!;
    const room = Math.max(0, (capacity - stored) / storedPerW);
    const mostW = room < chargeLimitW ? room : chargeLimitW;
    const fromSun = s < mostW ? s : mostW;
    const offered = efficiency * (left < chargerW ? left : chargerW);
    const wanted = mostW - fromSun;
    const charge = offered < wanted ? offered : wanted;
    const c = fromSun + charge;
    stored = mostW === room && c === room ? capacity : stored + c * storedPerW;
    state.chargedWmin = state.chargedWmin + c * dt;
    state.curtailedWmin = state.curtailedWmin + (s - fromSun) * dt;
    state.lossWmin = state.lossWmin + idleW * dt;
    sums[kind] = sums[kind]! + (passed + charge / efficiency) * dt;
    sums[SOURCE_STORED_WMIN] = sums[SOURCE_STORED_WMIN]! + charge * dt;
    sums[CHARGER_LOSS_WMIN] = sums[CHARGER_LOSS_WMIN]! + (charge / efficiency - charge) * dt;
    k++;
    if (stored < down || stored >= up) {
      ended = CROSSED;
      break;
    }
  }
  state.storedWmin = stored;
  if (k > 0) state.overloadedMinutes = 0;
  event[0] = ended;
  return k;
}
