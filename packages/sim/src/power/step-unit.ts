/**
 * One unit through a run of steps: inverter, solar input and bank. MODEL.md §6–7.
 *
 * The innermost loop of the library: no allocation, no calls, all state in locals. `Wmin` is watt-minutes. The minutes
 * of an hour in which the unit meets no limit only add up, and what they come to follows from sums: of watts and of
 * their squares where its net power keeps one sign (nights, clear hours, full banks and empty ones), of the net's sizes
 * too where it does not. All other minutes are stepped one by one.
 */
import {
  BLOCK_BASE_W,
  BLOCK_FIGURES,
  BLOCK_LEAST_W,
  BLOCK_MOST_W,
  BLOCK_PEAK_START_W,
  BLOCK_ROW,
  COLD_CHARGE_LIMIT_W,
  COLD_FIGURES,
  coldFloorWmin,
  MINUTES_PER_HOUR,
  solarWmin,
  type LoadBlocks,
  type SolarMinutes,
} from './hour-figures.ts';
import type { UnitParameters } from './unit-parameters.ts';

/** A unit at a moment of its run. Watt-minutes but for the bank's are sums since the outage's start. */
export interface UnitState {
  storedWmin: number;
  /** Inverter: conversion, idle, standby. */
  lossWmin: number;
  /** Into the bank and out of it, at its terminals. */
  chargedWmin: number;
  dischargedWmin: number;
  /** Solar that found no room. */
  curtailedWmin: number;
  selfDischargedWmin: number;
  /** Minutes in a row above the continuous rating. */
  overloadedMinutes: number;
}

export function createUnitState(storedWmin: number): UnitState {
  return {
    storedWmin,
    lossWmin: 0,
    chargedWmin: 0,
    dischargedWmin: 0,
    curtailedWmin: 0,
    selfDischargedWmin: 0,
    overloadedMinutes: 0,
  };
}

export function copyUnitState(from: UnitState, into: UnitState): void {
  into.storedWmin = from.storedWmin;
  into.lossWmin = from.lossWmin;
  into.chargedWmin = from.chargedWmin;
  into.dischargedWmin = from.dischargedWmin;
  into.curtailedWmin = from.curtailedWmin;
  into.selfDischargedWmin = from.selfDischargedWmin;
  into.overloadedMinutes = from.overloadedMinutes;
}

/** What a unit is to do in a call. */
export interface UnitSettings {
  /** The inverter is on; else off or asleep, and its panels still charge the bank. */
  on: boolean;
  /** Idle watts when on, standby watts when off. */
  idleW: number;
  /** AC watts of the thermostats that run, and extra watts of a start of one of them in the next step. */
  runningW: number;
  startW: number;
  /** Stop after a step that leaves the bank below this … */
  downWmin: number;
  /** … or at this or above … */
  upWmin: number;
  /** … or at this or more above its floor, full at most; Infinity unless it waits for that. */
  restartAboveFloorWmin: number;
  /** The first step is the first of an hour whose self-discharge is still to be taken; of the others, it is here. */
  leaksFirst: boolean;
  /** Length of each step, minutes; 1 but for the parts of a minute in which something stopped. */
  dt: number;
  /** The bank is drawn whatever its floor: it is known to last the step. */
  floorless: boolean;
}

export function createUnitSettings(): UnitSettings {
  return {
    on: true,
    idleW: 0,
    runningW: 0,
    startW: 0,
    downWmin: -Infinity,
    upWmin: Infinity,
    restartAboveFloorWmin: Infinity,
    leaksFirst: false,
    dt: 1,
    floorless: false,
  };
}

/** Minutes at which the watts of running thermostats change, in order; those of one minute may be several. */
export interface RunningChanges {
  readonly count: number;
  readonly at: Int32Array;
  /** How many of them are carried out. */
  next: number;
  /** From then on; and the extra watts of what starts in that minute. The last of a minute's holds. */
  readonly runningW: Float64Array;
  readonly startW: Float64Array;
}

/** How a call ended, left in `event[0]`. The step at which it stopped is not carried out, except for CROSSED. */
export const DONE = 0; // or self-discharge would carry the bank below the level: that hour is not begun
export const CROSSED = 1; // a level was crossed by the last step carried out
export const EMPTY = 2; // the bank would fall below its floor
export const OVERLOAD = 3; // above the continuous rating for longer than the unit bears
export const SURGE = 4; // a start above the surge rating
export const BATTERY_LIMIT = 5; // more than the modules may deliver

/**
 * Steps the unit through `count` steps; one only when they are shorter than a minute.
 *
 * @param parameters see unit-parameters.ts
 * @param state, settings see above; the state is changed in place
 * @param cold per hour of the outage, see hour-figures.ts
 * @param solar usable DC solar of every minute
 * @param loads, blocks AC watts asked of the unit beside the thermostats: blocks of an hour each, and which one holds
 *   in which hour of the outage; those of the hours met are made
 * @param from minute of the first step
 * @param changes of the thermostats' watts on the way; `next`, `runningW` and `startW` are left as they then are
 * @param event event[0] tells how the call ended
 * @returns steps carried out, `count` when nothing stopped it
 */
export function stepUnit(
  parameters: UnitParameters,
  state: UnitState,
  settings: UnitSettings,
  cold: Float64Array,
  solar: SolarMinutes,
  loads: LoadBlocks,
  blocks: Int32Array,
  from: number,
  count: number,
  changes: RunningChanges,
  event: Int32Array,
): number {
  const on = settings.on;
  const idleW = settings.idleW;
  const down = settings.downWmin;
  const k1 = parameters.lossPerW;
  const k2 = parameters.lossPerW2;
  const capacity = parameters.capacityWmin;
  const continuousW = parameters.continuousW;
  const surgeW = parameters.surgeW;
  const mostDrawnW = on ? parameters.dischargeLimitW : Infinity;
  const dt = settings.dt;
  const storedPerW = parameters.chargeEfficiency * dt;
  const drawnPerW = dt / parameters.dischargeEfficiency;
  const { figures, watts, startExtraW } = loads;
  const { usableW } = solar;

  // Sums are carried on, not added up per call, so that where calls end changes no bit; a part of a minute is scaled.
  const whole = dt === 1;
  let lost = whole ? state.lossWmin : 0;
  let charged = whole ? state.chargedWmin : 0;
  let curtailed = whole ? state.curtailedWmin : 0;
  let discharged = whole ? state.dischargedWmin : 0;
  let leaked = state.selfDischargedWmin;
  let stored = state.storedWmin;
  let overloaded = state.overloadedMinutes;
  let ended = DONE;
  let k = 0;
  let change = changes.next;
  let changeAt = change < changes.count ? changes.at[change]! - from : count; // in steps
  let runningW = settings.runningW;
  let startW = settings.startW;

  while (k < count && ended === DONE) {
    const hour = ((from + k) / MINUTES_PER_HOUR) | 0;
    const hourBegins = k;
    const storedBefore = stored;
    const leakedBefore = leaked;
    if (k > 0 || settings.leaksFirst) {
      const kept = stored * parameters.keptPerHour;
      if (kept < down) break;
      leaked += stored - kept;
      stored = kept;
    }
    const hourEnds = Math.min(count, (hour + 1) * MINUTES_PER_HOUR - from);
    const block = blocks[hour]!;
    const figuresAt = block * BLOCK_FIGURES;
    const wattsAt = ((figures[figuresAt + BLOCK_ROW]! | 0) - hour) * MINUTES_PER_HOUR + from;
    const startsAt = (block - hour) * MINUTES_PER_HOUR + from;
    const blockW = figures[figuresAt + BLOCK_BASE_W]!;
    const mostVaryingW = figures[figuresAt + BLOCK_MOST_W]!;
    const mostSunW = solar.mostW[hour]!;
    const floor = floorWmin(settings, cold, hour);
    const chargeLimitW = cold[hour * COLD_FIGURES + COLD_CHARGE_LIMIT_W]!;
    const up = upWmin(settings, floor, capacity);

    // The least and most that it may come to in any minute of the hour, whatever the thermostats do in it.
    for (; changeAt <= k; changeAt = ++change < changes.count ? changes.at[change]! - from : count) {
      runningW = changes.runningW[change]!;
      startW = changes.startW[change]!;
    }
    let leastRunningW = runningW;
    let mostRunningW = runningW;
    let mostStartW = startW;
    let changesEnd = change;
    for (; changesEnd < changes.count && changes.at[changesEnd]! - from < hourEnds; changesEnd++) {
      const w = changes.runningW[changesEnd]!;
      if (w < leastRunningW) leastRunningW = w;
      if (w > mostRunningW) mostRunningW = w;
      if (changes.startW[changesEnd]! > mostStartW) mostStartW = changes.startW[changesEnd]!;
    }
    const leastW = blockW + leastRunningW + figures[figuresAt + BLOCK_LEAST_W]!;
    const mostW = blockW + mostRunningW + mostVaryingW;
    const mostNetW = mostSunW - leastW - (idleW + leastW * (k1 + k2 * leastW));
    const leastNetW = solar.leastW[hour]! - mostW - (idleW + mostW * (k1 + k2 * mostW));
    const mindsStarts = blockW + mostRunningW + figures[figuresAt + BLOCK_PEAK_START_W]! > surgeW;
    const watch =
      mostW > continuousW || mostW + mostStartW > surgeW || mindsStarts || -leastNetW > mostDrawnW;

    // The rest of the hour at once, unless it may meet a limit on the way.
    const isFull = stored === capacity;
    if (!watch && whole && stored >= down && stored < up && (!isFull || leastNetW >= 0 || mostNetW < 0)) {
      const allLeft = leastNetW >= 0;
      const allLacking = mostNetW < 0;
      const overLimit = !isFull && mostNetW > chargeLimitW;
      const byMinute = !(allLeft || allLacking) || (overLimit && leastNetW < chargeLimitW);
      let loadWmin = 0;
      let loadW2min = 0;
      let netWmin = 0;
      let netSizeWmin = 0; // of |net|
      let limitSizeWmin = 0; // of |net - charge limit|
      let lastW = runningW;
      for (let m = k, next = change; m < hourEnds; next++) {
        const end = next < changesEnd ? changes.at[next]! - from : hourEnds;
        const baseW = blockW + lastW;
        if (byMinute)
          for (; m < end; m++) {
            const p = baseW + watts[wattsAt + m]!;
            const net = usableW[from + m]! - p - (idleW + p * (k1 + k2 * p));
            loadWmin += p;
            loadW2min += p * p;
            netWmin += net;
            netSizeWmin += Math.abs(net);
            limitSizeWmin += Math.abs(net - chargeLimitW);
          }
        else {
          const baseWmin = baseW * (end - m);
          let varyingWmin = 0;
          let varyingW2min = 0;
          if (mostVaryingW > 0)
            for (; m < end; m++) {
              const w = watts[wattsAt + m]!;
              varyingWmin += w;
              varyingW2min += w * w;
            }
          loadWmin += varyingWmin + baseWmin;
          loadW2min += varyingW2min + baseW * (2 * varyingWmin + baseWmin);
          m = end;
        }
        if (next < changesEnd) lastW = changes.runningW[next]!;
      }
      const minutes = hourEnds - k;
      const loss = idleW * minutes + k1 * loadWmin + k2 * loadW2min;
      if (!byMinute)
        netWmin = (mostSunW === 0 ? 0 : solarWmin(solar, from + k, from + hourEnds)) - loadWmin - loss;
      const limitWmin = netWmin - chargeLimitW * minutes;
      const left = allLeft ? netWmin : allLacking ? 0 : (netWmin + netSizeWmin) / 2;
      const over = isFull ? left : !overLimit ? 0 : byMinute ? (limitWmin + limitSizeWmin) / 2 : limitWmin;
      const taken = left - over;
      const lacking = left - netWmin;
      const most = stored + taken * storedPerW;
      const least = stored - lacking * drawnPerW;
      const atFloor = !on && allLacking && stored <= floor; // off with nothing left: the panels' little feeds its standby
      let carried = atFloor;
      if (atFloor) lost += loss + netWmin;
      else if ((most < capacity || isFull) && most < up && (least >= floor || allLeft) && least >= down) {
        stored = most - lacking * drawnPerW;
        charged += taken;
        curtailed += over;
        discharged += lacking;
        lost += loss;
        carried = true;
      }
      if (carried) {
        overloaded = 0;
        startW = 0;
        runningW = lastW;
        change = changesEnd;
        changeAt = change < changes.count ? changes.at[change]! - from : count;
        k = hourEnds;
        continue;
      }
    }

    while (k < hourEnds && ended === DONE) {
      for (; changeAt <= k; changeAt = ++change < changes.count ? changes.at[change]! - from : count) {
        runningW = changes.runningW[change]!;
        startW = changes.startW[change]!;
      }
      const end = changeAt < hourEnds ? changeAt : hourEnds;
      const baseW = blockW + runningW;
      while (k < end) {
        const p = baseW + watts[wattsAt + k]!;
        const loss = idleW + p * (k1 + k2 * p);
        const net = usableW[from + k]! - p - loss;
        if (watch) {
          const extraW = mindsStarts ? startExtraW[startsAt + k]! : 0;
          if (p + (extraW > startW ? extraW : startW) > surgeW) {
            ended = SURGE;
            break;
          }
          if (p > continuousW && overloaded >= parameters.overloadMinutes) {
            ended = OVERLOAD;
            break;
          }
          if (-net > mostDrawnW) {
            ended = BATTERY_LIMIT;
            break;
          }
        }
        // Mostly the bank takes what is left, or gives what lacks, and no branch has to ask which of the two: in a cloudy
        // hour that would be a toss-up every minute.
        const leftW = (net + Math.abs(net)) / 2;
        const lackingW = leftW - net;
        const takenW = leftW < chargeLimitW ? leftW : chargeLimitW;
        const gain = takenW * storedPerW;
        const drawn = lackingW * drawnPerW;
        if (gain < capacity - stored && (stored - drawn >= floor || lackingW === 0)) {
          stored = stored + gain - drawn;
          charged += takenW;
          curtailed += leftW - takenW;
          discharged += lackingW;
          lost += loss;
        } else if (net >= 0) {
          const c = (capacity - stored) / storedPerW;
          stored = capacity; // full is full to the last bit: somebody may wait for it
          charged += c;
          curtailed += net - c;
          lost += loss;
        } else if (stored - drawn >= floor) {
          stored -= drawn;
          discharged -= net;
          lost += loss;
        } else if (on) {
          ended = EMPTY;
          break;
        } else {
          // Standby that the panels do not feed comes from what is left above the floor, and is not drawn beyond that.
          const above = stored > floor ? stored - floor : 0;
          stored -= above;
          discharged += above / drawnPerW;
          lost += loss + net + above / drawnPerW;
        }
        overloaded = watch && p > continuousW ? overloaded + dt : 0; // only once the step is carried out
        startW = 0;
        k++;
        if (stored < down || stored >= up) {
          ended = CROSSED;
          break;
        }
      }
    }

    // Nothing of the hour was carried: it is not begun yet.
    if (k === hourBegins && ended !== DONE && leaked !== leakedBefore) {
      stored = storedBefore;
      leaked = leakedBefore;
      ended = DONE;
      break;
    }
  }

  state.storedWmin = stored;
  state.selfDischargedWmin = leaked;
  state.lossWmin = whole ? lost : state.lossWmin + lost * dt;
  state.chargedWmin = whole ? charged : state.chargedWmin + charged * dt;
  state.curtailedWmin = whole ? curtailed : state.curtailedWmin + curtailed * dt;
  state.dischargedWmin = whole ? discharged : state.dischargedWmin + discharged * dt;
  state.overloadedMinutes = overloaded;
  changes.next = change;
  settings.runningW = runningW;
  settings.startW = startW;
  event[0] = ended;
  return k;
}

/** The level below which the bank is not drawn in that hour of the outage. */
export function floorWmin(settings: UnitSettings, cold: Float64Array, hour: number): number {
  return settings.floorless ? -Infinity : coldFloorWmin(cold, hour);
}

/** The level at or above which a call ends: what somebody waits for, or the restart. */
export function upWmin(settings: UnitSettings, floor: number, capacity: number): number {
  const { upWmin: up, restartAboveFloorWmin: aboveFloor } = settings;
  return aboveFloor === Infinity ? up : Math.min(up, restartLevelWmin(floor, aboveFloor, capacity));
}

/** Where a bank comes back after a cut-off: so far above its floor, full at most. */
export function restartLevelWmin(floor: number, aboveFloor: number, capacity: number): number {
  return Math.min(capacity, floor + aboveFloor);
}

/** Loses what the bank leaks in an hour. */
export function selfDischarge(parameters: UnitParameters, state: UnitState): void {
  const stored = state.storedWmin;
  const kept = stored * parameters.keptPerHour;
  state.selfDischargedWmin = state.selfDischargedWmin + (stored - kept);
  state.storedWmin = kept;
}

/** Share of one more step of `dt` minutes that the bank can carry before it reaches its floor, 0…1. Same arithmetic as the loop. */
export function stepShareUntilEmpty(
  parameters: UnitParameters,
  storedWmin: number,
  floorWmin: number,
  idleW: number,
  solarW: number,
  loadW: number,
  dt: number,
): number {
  const loss = idleW + loadW * (parameters.lossPerW + parameters.lossPerW2 * loadW);
  const drawn = ((loadW + loss - solarW) * dt) / parameters.dischargeEfficiency;
  const left = storedWmin - floorWmin;
  return left <= 0 || drawn <= 0 ? 0 : Math.min(1, left / drawn);
}
