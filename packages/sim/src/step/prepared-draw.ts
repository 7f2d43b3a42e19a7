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
import type { UsageDraw } from '../usage/usage-draw.ts';
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
import type { Household } from './household.ts';
import { createPreparedSources, type PreparedSources } from './prepared-sources.ts';
import { thermostatParameters } from './thermostat-parameters.ts';
import { createPlace, fillPlace, type ThermostatPlace } from './thermostat-surroundings.ts';
import type { WantedMinutes } from './wanted-minutes.ts';

/** Solar of one unit: usable watts, those its panels give before its input limit, and the sums the books need. */
export interface UnitSolar extends SolarMinutes {
  /** Watts before the limit in the hours that reach it; read through `availableW`, which knows the others too. */
  readonly unclippedW: Float32Array;
  /** 1 for each hour with a minute beyond the limit. */
  readonly clippedHours: Uint8Array;
  availableWh: number;
  clippedWh: number;
}

/** What the circuits want: the same for every household with the same circuits, strategies and legs. */
export interface PreparedWants extends GroupWants, WantedMinutes {
  /** Per group, watt-minutes wanted before each hour (length hours + 1); read through `groupWminUntil`. */
  readonly groupHourWmin: readonly Float64Array[];
  /** Per group, the circuits whose watts are its own: those that may want anything, one at least. */
  readonly groupWanting: readonly (readonly number[])[];
  /** Per group, its circuits on which anything starts. */
  readonly groupStarting: readonly (readonly number[])[];
  readonly thermostatSurroundings: readonly Float32Array[];
  readonly thermostatPlaces: readonly ThermostatPlace[];
  /** Per group, positions of the thermostats on its circuits. */
  readonly groupThermostats: readonly (readonly number[])[];
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
  // A group in which one circuit wants anything reads that circuit's own arrays; likewise the starts.
  const groupWanting = groups.map(({ circuits, first }) => {
    const wanting = circuits.filter((c) => usage.circuits[c]!.wants);
    return wanting.length > 0 ? wanting : [first];
  });
  const only = groupWanting.map(({ length, 0: c }) => (length === 1 ? usage.circuits[c!] : undefined));
  const groupStarting = groupWanting.map((circuits) =>
    circuits.filter((c) => usage.circuits[c]!.startExtraW !== undefined),
  );
  const groupExtraW = groupStarting.map((starting) =>
    starting.length > 1 ? new Float32Array(minutes) : usage.circuits[starting[0] ?? -1]?.startExtraW,
  );
  const watched = new Set(groups.flatMap((g) => g.watched));
  return {
    usage,
    groupWanting,
    groupW: only.map((circuit) => circuit?.demandW ?? new Float32Array(minutes)),
    groupHourWmin: groups.map(() => new Float64Array(hours + 1)),
    groupExtraW,
    groupStarting,
    groupHours: new Float32Array(hours * groups.length * GROUP_FIGURES),
    wantedBefore: household.circuits.map((_, c) => (watched.has(c) ? new Uint32Array(hours + 1) : undefined)),
    wantedReady: new Uint8Array(household.circuits.length),
    thermostatSurroundings: usage.thermostats.map((t) => placeC(ambient, t.surroundings)),
    thermostatPlaces: usage.thermostats.map((want) => {
      const { graceMinutes } = household.circuits[want.circuitIndex]!;
      return createPlace(thermostatParameters(want, graceMinutes), hours);
    }),
    groupThermostats: groups.map(({ circuits }) =>
      usage.thermostats.flatMap((t, i) => (circuits.includes(t.circuitIndex) ? i : [])),
    ),
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
export function fillWants(wants: PreparedWants): void {
  for (let g = 0; g < wants.groupW.length; g++) fillGroup(wants, g);
  wants.wantedReady.fill(0);
  forgetSums(wants.hourLoads);
  wants.thermostatPlaces.forEach((place, i) => fillPlace(place, wants.thermostatSurroundings[i]!));
}

function fillGroup(draw: PreparedWants, group: number): void {
  const circuits = draw.groupWanting[group]!;
  if (circuits.length === 1) takeOver(draw, group, circuits[0]!);
  else addUpCircuits(draw, group, circuits);
  const starting = draw.groupStarting[group]!;
  if (starting.length > 1) mergeStarts(draw, group, starting);
  if (starting.length > 0) noteStarts(draw, group, starting);
}

/** A group's hours are those of the one circuit that wants anything. */
function takeOver(draw: PreparedWants, group: number, circuit: number): void {
  const { hourWmin, leastW, mostW } = draw.usage.circuits[circuit]!;
  const { groupHours } = draw;
  const sums = draw.groupHourWmin[group]!;
  let sum = 0;
  for (let h = 0; h < hourWmin.length; h++) {
    const at = groupHourAt(draw, h) + group * GROUP_FIGURES;
    groupHours[at + GROUP_LEAST_W] = leastW[h]!;
    groupHours[at + GROUP_MOST_W] = mostW[h]!;
    sums[h + 1] = sum += hourWmin[h]!;
  }
}

/** The largest of the circuits' starts, minute by minute, in place of those of the draw before. */
function mergeStarts(draw: PreparedWants, group: number, starting: readonly number[]): void {
  const { groupHours } = draw;
  const extraW = draw.groupExtraW[group]!;
  for (let h = 0; 60 * h < extraW.length; h++)
    if (groupHours[groupHourAt(draw, h) + group * GROUP_FIGURES + GROUP_EXTRA_W]! > 0)
      extraW.fill(0, 60 * h, 60 * h + 60);
  for (let k = 0; k < starting.length; k++) {
    const { startExtraW, starts } = draw.usage.circuits[starting[k]!]!;
    for (let i = 0; i < starts.count; i++) {
      const minute = starts.at[i]!;
      extraW[minute] = Math.max(extraW[minute]!, startExtraW![minute]!);
    }
  }
}

/** The most extra watts of a start in each hour. */
function noteStarts(draw: PreparedWants, group: number, starting: readonly number[]): void {
  const { groupHours } = draw;
  for (let k = 0; k < starting.length; k++) {
    const hourExtraW = draw.usage.circuits[starting[k]!]!.hourExtraW!;
    for (let h = 0; h < hourExtraW.length; h++) {
      const at = groupHourAt(draw, h) + group * GROUP_FIGURES + GROUP_EXTRA_W;
      const w = hourExtraW[h]!;
      if (k === 0 || w > groupHours[at]!) groupHours[at] = w;
    }
  }
}

/** The watts of several circuits, hour by hour. Exact in any order: watts are kept to a 64th. */
function addUpCircuits(draw: PreparedWants, group: number, circuits: readonly number[]): void {
  const { usage, groupHours } = draw;
  const sumW = draw.groupW[group]!;
  const sums = draw.groupHourWmin[group]!;
  let sum = 0;
  for (let h = 0; h + 1 < sums.length; h++) {
    let leastW = 0;
    let mostW = 0;
    let busy = 0;
    for (let k = 0; k < circuits.length; k++) {
      const circuit = usage.circuits[circuits[k]!]!;
      sum += circuit.hourWmin[h]!;
      leastW += circuit.leastW[h]!;
      mostW += circuit.mostW[h]!;
      busy += circuit.busyHours[h]!;
    }
    sums[h + 1] = sum;
    const at = groupHourAt(draw, h) + group * GROUP_FIGURES;
    // the same watts all hour are often there from the draw before
    const stays =
      busy === 0 && groupHours[at + GROUP_LEAST_W] === leastW && groupHours[at + GROUP_MOST_W] === leastW;
    if (!stays) addUpHour(draw, circuits, h, sumW);
    groupHours[at + GROUP_LEAST_W] = busy > 1 ? leastOfHour(sumW, h) : leastW;
    groupHours[at + GROUP_MOST_W] = busy > 1 ? mostOfHour(sumW, h) : mostW;
  }
}

function addUpHour(
  { usage }: PreparedWants,
  circuits: readonly number[],
  hour: number,
  sumW: Float32Array,
): void {
  const from = 60 * hour;
  const end = Math.min(sumW.length, from + 60);
  let quietW = 0;
  for (let k = 0; k < circuits.length; k++) {
    const { busyHours, leastW } = usage.circuits[circuits[k]!]!;
    if (busyHours[hour] === 0) quietW += leastW[hour]!;
  }
  let laid = false;
  for (let k = 0; k < circuits.length; k++) {
    const { demandW, busyHours } = usage.circuits[circuits[k]!]!;
    if (busyHours[hour] === 0) continue;
    if (laid) for (let m = from; m < end; m++) sumW[m] = sumW[m]! + demandW[m]!;
    else for (let m = from; m < end; m++) sumW[m] = quietW + demandW[m]!;
    laid = true;
  }
  if (!laid) for (let m = from; m < end; m++) sumW[m] = quietW;
}

function leastOfHour(watts: Float32Array, hour: number): number {
  let least = Infinity;
  const end = Math.min(watts.length, 60 * hour + 60);
  for (let m = 60 * hour; m < end; m++) if (watts[m]! < least) least = watts[m]!;
  return least;
}

function mostOfHour(watts: Float32Array, hour: number): number {
  let most = 0;
  const end = Math.min(watts.length, 60 * hour + 60);
  for (let m = 60 * hour; m < end; m++) if (watts[m]! > most) most = watts[m]!;
  return most;
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
  const leastW = draw.groupHours[at + GROUP_LEAST_W]!;
  if (leastW === draw.groupHours[at + GROUP_MOST_W])
    return sums[hour]! + (minute - 60 * hour) * leastW + (time - minute) * leastW;
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
