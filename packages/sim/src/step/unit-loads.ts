/** What a unit must carry in a block of minutes, thermostats aside. MODEL.md §5. */
import { mayExceedRating, SET_BASE_W, SET_IDLE_W, SET_WATCH } from '../power/step-unit.ts';
import type { PreparedWants } from './prepared-draw.ts';
import type { UnitRun } from './run.ts';

/**
 * Adds up the groups that hang on the unit in `count` minutes from `minute`, all in the outage's hour `hour`. Groups
 * that ask for the same watts all hour go into one number, those that ask for nothing are passed over, and starts are
 * only looked at when some minute of the hour could exceed a rating.
 */
export function loadUnit(
  unit: UnitRun,
  wants: PreparedWants,
  minute: number,
  hour: number,
  count: number,
): void {
  const { shares, loadW, startExtraW, settings } = unit;
  const { groupW, groupExtraW, groupLeastW, groupMostW, groupMostExtraW } = wants;
  let baseW = 0;
  let peakW = unit.thermostatW;
  let peakExtraW = unit.thermostatStartW;
  loadW.fill(0, 0, count);
  for (let g = 0; g < shares.length; g++) {
    const share = shares[g]!;
    const mostW = groupMostW[g]![hour]!;
    if (share === 0 || mostW === 0) continue;
    peakW += share * mostW;
    peakExtraW = Math.max(peakExtraW, share * groupMostExtraW[g]![hour]!);
    if (groupLeastW[g]![hour]! === mostW) baseW += share * mostW;
    else addShare(loadW, groupW[g]!, share, minute, count);
  }
  settings[SET_BASE_W] = baseW;
  const watch = mayExceedRating(unit.parameters, settings[SET_IDLE_W]!, peakW, peakW + peakExtraW);
  settings[SET_WATCH] = watch ? 1 : 0;
  if (!watch) return;
  startExtraW.fill(0, 0, count);
  for (let g = 0; g < shares.length; g++) {
    const extra = groupExtraW[g];
    if (extra !== undefined && shares[g]! > 0) keepLargerShare(startExtraW, extra, shares[g]!, minute, count);
  }
}

function addShare(sum: Float32Array, watts: Float32Array, share: number, from: number, count: number): void {
  for (let k = 0; k < count; k++) sum[k] = sum[k]! + share * watts[from + k]!;
}

function keepLargerShare(
  most: Float32Array,
  extra: Float32Array,
  share: number,
  from: number,
  count: number,
): void {
  for (let k = 0; k < count; k++) {
    const w = share * extra[from + k]!;
    if (w > most[k]!) most[k] = w;
  }
}
