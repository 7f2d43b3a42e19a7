/** One draw made ready for one household: what every strategy's run reads. */
import type { OutageClock } from '../clock/outage-clock.ts';
import type { Streams } from '../chance/streams.ts';
import { drawableFraction, floorFraction } from '../power/cold.ts';
import { CAPACITY_WMIN } from '../power/unit-parameters.ts';
import type { UsageDraw } from '../usage/usage-draw.ts';
import { placeC, type Ambient } from './ambient.ts';
import type { CircuitGroup, Household } from './household.ts';
import { THERMOSTAT_PARAMETERS, thermostatParameters } from './thermostat-layout.ts';

/** Solar of one unit: watts its panels give, watts after its input limit, and the sums the books need. */
export interface UnitSolar {
  readonly availableW: Float32Array;
  readonly usableW: Float32Array;
  availableWh: number;
  clippedWh: number;
}

/** What the circuits want: the same for every household with the same circuits, strategies and legs. */
export interface PreparedWants {
  readonly usage: UsageDraw;
  /** Per group, watts wanted each minute, thermostats aside, and their running sum (length minutes + 1). */
  readonly groupW: readonly Float32Array[];
  readonly groupWmin: readonly Float64Array[];
  /** Per group, largest extra watts of a start; undefined when nothing in it starts. */
  readonly groupExtraW: readonly (Float32Array | undefined)[];
  /** Per group and hour of the outage: least and most watts of a minute, most extra watts of a start. */
  readonly groupLeastW: readonly Float32Array[];
  readonly groupMostW: readonly Float32Array[];
  readonly groupMostExtraW: readonly Float32Array[];
  /** Per watched circuit, minutes wanted so far (length minutes + 1); read through `wantedMinutesOf`. */
  readonly wantedMinutes: readonly (Uint32Array | undefined)[];
  /** 1 once a circuit's are counted in this draw: few runs need them. */
  readonly wantedReady: Uint8Array;
  readonly thermostatParameters: Float64Array;
  readonly thermostatSurroundings: readonly Float32Array[];
}

/** What the units have to meet it with. */
export interface PreparedSupply {
  readonly solar: readonly UnitSolar[];
  /** Per unit, one value per hour of the outage. */
  readonly floorWmin: readonly Float64Array[];
  readonly chargeLimitW: readonly Float64Array[];
  readonly startWmin: Float64Array;
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
    groupWmin: groups.map(() => new Float64Array(minutes + 1)),
    groupExtraW,
    groupLeastW: groups.map(() => new Float32Array(hours)),
    groupMostW: groups.map(() => new Float32Array(hours)),
    groupMostExtraW: groups.map(() => new Float32Array(hours)),
    wantedMinutes: household.circuits.map((_, c) =>
      watched.has(c) ? new Uint32Array(minutes + 1) : undefined,
    ),
    wantedReady: new Uint8Array(household.circuits.length),
    thermostatParameters: new Float64Array(usage.thermostats.length * THERMOSTAT_PARAMETERS),
    thermostatSurroundings: usage.thermostats.map((t) => placeC(ambient, t.surroundings)),
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
    floorWmin: units.map(() => new Float64Array(hours)),
    chargeLimitW: units.map(() => new Float64Array(hours)),
    startWmin: new Float64Array(units.length),
  };
}

/** Fills the wants from the draw's usage, which is filled already. */
export function fillWants(wants: PreparedWants, household: Household): void {
  fillGroups(wants, household);
  wants.wantedReady.fill(0);
  wants.usage.thermostats.forEach((want, i) => {
    const { graceMinutes } = household.circuits[want.circuitIndex]!;
    thermostatParameters(want, graceMinutes, wants.thermostatParameters, i * THERMOSTAT_PARAMETERS);
  });
}

function fillGroups(draw: PreparedWants, { groups }: Household): void {
  for (let g = 0; g < groups.length; g++) {
    const { circuits } = groups[g]!;
    const extra = draw.groupExtraW[g];
    if (circuits.length > 1) {
      extra?.fill(0);
      draw.groupW[g]!.fill(0);
      for (const c of circuits) {
        const { demandW, startExtraW } = draw.usage.circuits[c]!;
        addInto(draw.groupW[g]!, demandW);
        if (extra !== undefined && startExtraW !== undefined) keepLarger(extra, startExtraW);
      }
    }
    sumUp(draw.groupW[g]!, draw.groupWmin[g]!, draw.groupLeastW[g]!, draw.groupMostW[g]!);
    if (extra !== undefined) mostOfHours(extra, draw.groupMostExtraW[g]!);
  }
}

function addInto(sum: Float32Array, part: Float32Array): void {
  for (let m = 0; m < sum.length; m++) sum[m] = sum[m]! + part[m]!;
}

function keepLarger(most: Float32Array, part: Float32Array): void {
  for (let m = 0; m < most.length; m++) if (part[m]! > most[m]!) most[m] = part[m]!;
}

/** Running sums (`sums[m]` is what was wanted before minute m), and the least and most of each hour. */
function sumUp(watts: Float32Array, sums: Float64Array, least: Float32Array, most: Float32Array): void {
  let sum = 0;
  for (let h = 0; h < least.length; h++) {
    const end = Math.min(watts.length, (h + 1) * 60);
    let low = Infinity;
    let high = 0;
    for (let m = h * 60; m < end; m++) {
      const w = watts[m]!;
      sum += w;
      sums[m + 1] = sum;
      if (w < low) low = w;
      if (w > high) high = w;
    }
    least[h] = low;
    most[h] = high;
  }
}

function mostOfHours(values: Float32Array, most: Float32Array): void {
  for (let h = 0; h < most.length; h++) {
    const end = Math.min(values.length, (h + 1) * 60);
    let high = 0;
    for (let m = h * 60; m < end; m++) if (values[m]! > high) high = values[m]!;
    most[h] = high;
  }
}

/** Fills floors and charge limits hour by hour from the banks' temperature, and the charge at the start. */
export function fillSupply(
  draw: PreparedSupply,
  household: Household,
  ambient: Ambient,
  streams: Streams,
): void {
  household.units.forEach(({ id, battery }, u) => {
    const capacity = household.parameters[u]![CAPACITY_WMIN]!;
    const surroundingsC = placeC(ambient, battery.place);
    const floors = draw.floorWmin[u]!;
    const limits = draw.chargeLimitW[u]!;
    const maxChargeW = battery.modules * battery.module.maxChargeW;
    for (let h = 0; h < floors.length; h++) {
      const bankC = surroundingsC[h * 60]!;
      floors[h] =
        capacity * floorFraction(battery.cutOffFraction, drawableFraction(battery.coldCapacity, bankC));
      limits[h] = bankC < battery.minChargeC ? 0 : maxChargeW;
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
    countUp(draw.usage.circuits[circuit]!.demandW, sums);
    draw.wantedReady[circuit] = 1;
  }
  return sums;
}

function countUp(demandW: Float32Array, sums: Uint32Array): void {
  let minutes = 0;
  for (let m = 0; m < demandW.length; m++) {
    minutes += demandW[m]! > 0 ? 1 : 0;
    sums[m + 1] = minutes;
  }
}
