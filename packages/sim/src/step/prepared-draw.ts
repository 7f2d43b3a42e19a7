/** One draw made ready for one household: what every strategy's run reads. */
import type { OutageClock } from '../clock/outage-clock.ts';
import type { Streams } from '../chance/streams.ts';
import { drawableFraction, floorFraction } from '../power/cold.ts';
import {
  COLD_CHARGE_LIMIT_W,
  COLD_FIGURES,
  COLD_FLOOR_WMIN,
  MINUTES_PER_HOUR,
  type SolarMinutes,
} from '../power/hour-figures.ts';
import type { CircuitWant, UsageDraw } from '../usage/usage-draw.ts';
import { placeC, type Ambient } from './ambient.ts';
import {
  GROUP_EXTRA_W,
  GROUP_FIGURES,
  GROUP_LEAST_W,
  GROUP_MOST_W,
  groupHourAt,
  type GroupWants,
} from './group-wants.ts';
import { createHourLoads, forgetSums, type HourLoads } from './hour-loads.ts';
import type { CircuitGroup, Household } from './household.ts';
import { createPreparedSources, type PreparedSources } from './prepared-sources.ts';
import { createSwitchings, type Switchings } from './switchings.ts';
import { thermostatParameters } from './thermostat-state.ts';
import { createPlace, fillPlace, type ThermostatPlace } from './thermostat-surroundings.ts';

/** Solar of one unit: watts its panels give, usable ones after its input limit, and the sums the books need. */
export interface UnitSolar extends SolarMinutes {
  readonly availableW: Float32Array;
  availableWh: number;
  clippedWh: number;
}

/** What the circuits want: the same for every household with the same circuits, strategies and legs. */
export interface PreparedWants extends GroupWants {
  readonly usage: UsageDraw;
  /** Per group, watt-minutes wanted before each hour (length hours + 1); read through `groupWminUntil`. */
  readonly groupHourWmin: readonly Float64Array[];
  /** Per group, 1 for each hour in which its watts may change; a group of one circuit reads the circuit's own. */
  readonly groupBusyHours: readonly Uint8Array[];
  /** Scratch, one value per hour. */
  readonly flatW: Float64Array;
  /** Per watched circuit, minutes wanted so far (length minutes + 1); read through `wantedMinutesOf`. */
  readonly wantedMinutes: readonly (Uint32Array | undefined)[];
  /** 1 once a circuit's are counted in this draw: few runs need them. */
  readonly wantedReady: Uint8Array;
  readonly thermostatSurroundings: readonly Float32Array[];
  readonly thermostatPlaces: readonly ThermostatPlace[];
  /** Scratch of the run that is being stepped. */
  readonly switchings: Switchings;
  /** Sums of the groups' watts, made where runs need them. */
  readonly hourLoads: HourLoads;
}

/** What the units have to meet it with. */
export interface PreparedSupply {
  readonly solar: readonly UnitSolar[];
  /** Per unit, what the cold does to its bank in each hour: see power/hour-figures.ts. */
  readonly cold: readonly Float64Array[];
  readonly startWmin: Float64Array;
  /** Undefined where the household has none. */
  readonly sources: PreparedSources | undefined;
}

export interface PreparedDraw extends PreparedWants, PreparedSupply {
  readonly minutes: number;
  readonly clock: OutageClock;
  readonly ambient: Ambient;
}

/** Buffers for the wants of one household, filled again for every draw. */
export function createWants(household: Household, ambient: Ambient, usage: UsageDraw): PreparedWants {
  const { minutes } = usage;
  const hours = Math.ceil(minutes / 60);
  const { groups } = household;
  // A group of one circuit reads that circuit's own arrays.
  const only = (g: CircuitGroup) => (g.circuits.length === 1 ? usage.circuits[g.circuits[0]!] : undefined);
  const starts = (g: CircuitGroup) => g.circuits.some((c) => usage.circuits[c]!.startExtraW !== undefined);
  const groupW = groups.map((g) => only(g)?.demandW ?? new Float32Array(minutes));
  const groupExtraW = groups.map(
    (g) => only(g)?.startExtraW ?? (starts(g) ? new Float32Array(minutes) : undefined),
  );
  const watched = new Set(groups.flatMap((g) => g.watched));
  return {
    usage,
    groupW,
    groupHourWmin: groups.map(() => new Float64Array(hours + 1)),
    groupExtraW,
    groupHours: new Float32Array(hours * groups.length * GROUP_FIGURES),
    groupBusyHours: groups.map((g) => only(g)?.busyHours ?? new Uint8Array(hours)),
    flatW: new Float64Array(hours),
    wantedMinutes: household.circuits.map((_, c) =>
      watched.has(c) ? new Uint32Array(minutes + 1) : undefined,
    ),
    wantedReady: new Uint8Array(household.circuits.length),
    thermostatSurroundings: usage.thermostats.map((t) => placeC(ambient, t.surroundings)),
    thermostatPlaces: usage.thermostats.map((want) => {
      const { graceMinutes } = household.circuits[want.circuitIndex]!;
      return createPlace(thermostatParameters(want, graceMinutes), hours);
    }),
    switchings: createSwitchings(usage.thermostats.length),
    hourLoads: createHourLoads(groups.length, hours),
  };
}

/** Buffers for the supply of one household. */
export function createSupply(
  household: Household,
  minutes: number,
  solar: readonly UnitSolar[],
): PreparedSupply {
  const hours = Math.ceil(minutes / 60);
  const { units } = household;
  return {
    solar,
    cold: units.map(() => new Float64Array(hours * COLD_FIGURES)),
    startWmin: new Float64Array(units.length),
    sources: household.sources === undefined ? undefined : createPreparedSources(minutes),
  };
}

/** Fills the wants from the draw's usage, which is filled already. */
export function fillWants(wants: PreparedWants, { groups }: Household): void {
  for (let g = 0; g < groups.length; g++) fillGroup(wants, g, groups[g]!.circuits);
  wants.wantedReady.fill(0);
  forgetSums(wants.hourLoads);
  wants.thermostatPlaces.forEach((place, i) => fillPlace(place, wants.thermostatSurroundings[i]!));
}

function fillGroup(draw: PreparedWants, group: number, circuits: readonly number[]): void {
  const extraW = draw.groupExtraW[group];
  if (extraW !== undefined) clearStarts(draw, group, circuits.length > 1 ? extraW : undefined);
  for (let k = 0; k < circuits.length; k++) noteStarts(draw, group, draw.usage.circuits[circuits[k]!]!);
  if (circuits.length > 1) addUpCircuits(draw, group, circuits);
  sumUp(draw, group);
}

/** Takes away the starts of the draw before: from a group's own row too, which several circuits share. */
function clearStarts(draw: PreparedWants, group: number, extraW: Float32Array | undefined): void {
  const { groupHours, groupBusyHours } = draw;
  for (let h = 0; h < groupBusyHours[group]!.length; h++) {
    const at = groupHourAt(draw, h) + group * GROUP_FIGURES + GROUP_EXTRA_W;
    if (extraW !== undefined && groupHours[at]! > 0) extraW.fill(0, 60 * h, 60 * h + 60);
    groupHours[at] = 0;
  }
}

/** Keeps the larger of the starts there are and the circuit's, minute by minute; and the most of each hour. */
function noteStarts(draw: PreparedWants, group: number, { startExtraW, starts }: CircuitWant): void {
  if (startExtraW === undefined) return;
  const extraW = draw.groupExtraW[group]!;
  const { groupHours } = draw;
  for (let i = 0; i < starts.count; i++) {
    const minute = starts.at[i]!;
    const at = groupHourAt(draw, (minute / 60) | 0) + group * GROUP_FIGURES + GROUP_EXTRA_W;
    const w = startExtraW[minute]!;
    if (w > extraW[minute]!) extraW[minute] = w;
    if (w > groupHours[at]!) groupHours[at] = w;
  }
}

/** The watts of several circuits, minute by minute. Exact in any order: watts are kept to a 64th. */
function addUpCircuits(draw: PreparedWants, group: number, circuits: readonly number[]): void {
  const sumW = draw.groupW[group]!;
  const { groupHours } = draw;
  const busyHours = draw.groupBusyHours[group]!;
  const flatW = draw.flatW.fill(0);
  busyHours.fill(0);
  for (let k = 0; k < circuits.length; k++) {
    const circuit = draw.usage.circuits[circuits[k]!]!;
    for (let h = 0; h < busyHours.length; h++) {
      if (circuit.busyHours[h] !== 0) busyHours[h] = 1;
      else flatW[h] = flatW[h]! + circuit.demandW[60 * h]!;
    }
  }
  for (let h = 0; h < busyHours.length; h++) {
    const from = 60 * h;
    const w = flatW[h]!;
    const at = groupHourAt(draw, h) + group * GROUP_FIGURES;
    // the same watts all hour are often there from the draw before
    const stays = groupHours[at + GROUP_LEAST_W] === w && groupHours[at + GROUP_MOST_W] === w;
    if (busyHours[h] !== 0 || !stays) sumW.fill(w, from, from + 60);
  }
  for (let k = 0; k < circuits.length; k++) {
    const circuit = draw.usage.circuits[circuits[k]!]!;
    addBusyHours(circuit.demandW, circuit.busyHours, sumW);
  }
}

function addBusyHours(demandW: Float32Array, busyHours: Uint8Array, sumW: Float32Array): void {
  for (let h = 0; h < busyHours.length; h++) {
    if (busyHours[h] === 0) continue;
    const end = Math.min(sumW.length, 60 * h + 60);
    for (let m = 60 * h; m < end; m++) sumW[m] = sumW[m]! + demandW[m]!;
  }
}

/** Watt-minutes before each hour, and the least and most watts in it: one product for each stretch of the same watts. */
function sumUp(draw: PreparedWants, group: number): void {
  const watts = draw.groupW[group]!;
  const busyHours = draw.groupBusyHours[group]!;
  const sums = draw.groupHourWmin[group]!;
  const { groupHours } = draw;
  let sum = 0;
  for (let h = 0; h < busyHours.length; h++) {
    let since = 60 * h;
    const end = Math.min(watts.length, since + 60);
    let same = watts[since]!;
    let low = same;
    let high = same;
    if (busyHours[h] !== 0) {
      for (let m = since + 1; m < end; m++) {
        const w = watts[m]!;
        if (w === same) continue;
        sum += same * (m - since);
        since = m;
        same = w;
        if (w < low) low = w;
        else if (w > high) high = w;
      }
    }
    sum += same * (end - since);
    const at = groupHourAt(draw, h) + group * GROUP_FIGURES;
    groupHours[at + GROUP_LEAST_W] = low;
    groupHours[at + GROUP_MOST_W] = high;
    sums[h + 1] = sum;
  }
}

/**
 * Watt-minutes that the group wanted, thermostats aside, from the outage's start to `time`, which may fall inside a
 * minute. The last hour is added up minute by minute: watts are kept to a 64th, so the order changes no bit.
 */
export function groupWminUntil(draw: PreparedWants, group: number, time: number): number {
  const watts = draw.groupW[group]!;
  const sums = draw.groupHourWmin[group]!;
  const minute = Math.floor(time);
  if (minute >= watts.length) return sums[sums.length - 1]!;
  const hour = Math.floor(minute / 60);
  const at = groupHourAt(draw, hour) + group * GROUP_FIGURES;
  if (draw.groupHours[at + GROUP_LEAST_W] === draw.groupHours[at + GROUP_MOST_W])
    return sums[hour]! + (minute - 60 * hour) * watts[minute]! + (time - minute) * watts[minute]!;
  let sum = sums[hour]!;
  for (let m = 60 * hour; m < minute; m++) sum += watts[m]!;
  return sum + (time - minute) * watts[minute]!;
}

/** Fills floors and charge limits hour by hour from the banks' temperature, and the charge at the start. */
export function fillSupply(
  draw: PreparedSupply,
  household: Household,
  ambient: Ambient,
  streams: Streams,
): void {
  household.units.forEach(({ id, battery }, u) => {
    const capacity = household.parameters[u]!.capacityWmin;
    const surroundingsC = placeC(ambient, battery.place);
    const cold = draw.cold[u]!;
    const maxChargeW = battery.modules * battery.module.maxChargeW;
    for (let at = 0, minute = 0; at < cold.length; at += COLD_FIGURES, minute += MINUTES_PER_HOUR) {
      const bankC = surroundingsC[minute]!;
      const drawable = drawableFraction(battery.coldCapacity, bankC);
      cold[at + COLD_FLOOR_WMIN] = capacity * floorFraction(battery.cutOffFraction, drawable);
      cold[at + COLD_CHARGE_LIMIT_W] = bankC < battery.minChargeC ? 0 : maxChargeW;
    }
    draw.startWmin[u] = capacity * startFraction(battery, streams(`charge/${id}`));
  });
}

/** A household that cycles its bank while the grid is up is caught anywhere between its reserve and full. */
function startFraction(
  battery: { startFraction?: number | undefined; reserveFraction: number },
  uniform: () => number,
): number {
  if (battery.startFraction !== undefined) return battery.startFraction;
  return battery.reserveFraction + (1 - battery.reserveFraction) * uniform();
}

/** Running counts of the minutes in which a watched circuit wants anything, length minutes + 1. */
export function wantedMinutesOf(draw: PreparedWants, circuit: number): Uint32Array {
  const sums = draw.wantedMinutes[circuit]!;
  if (draw.wantedReady[circuit] === 0) {
    countUp(draw.usage.circuits[circuit]!, sums);
    draw.wantedReady[circuit] = 1;
  }
  return sums;
}

function countUp({ demandW, busyHours }: CircuitWant, sums: Uint32Array): void {
  let minutes = 0;
  for (let h = 0; h < busyHours.length; h++) {
    const from = 60 * h;
    const end = Math.min(demandW.length, from + 60);
    if (busyHours[h] === 0 && demandW[from] === 0) sums.fill(minutes, from + 1, end + 1);
    else if (busyHours[h] === 0) for (let m = from; m < end; m++) sums[m + 1] = ++minutes;
    else
      for (let m = from; m < end; m++) {
        if (demandW[m]! > 0) minutes++;
        sums[m + 1] = minutes;
      }
  }
}
