/** How warm a room is: one store of heat, by the household's own figures or as its thermostats carry it. MODEL.md §19.3. */
import { exp } from '../../portable/elementary.ts';
import { MOST_AT_ONCE, type Sight } from './watch-run.ts';

/** A source of heat in the room, or of cold. */
export interface HeatSource {
  /** Positions of its thermostats: heat while they run. */
  readonly thermostats: readonly number[];
  readonly heatW: number;
  /** Position of the circuit whose served watts give `heatPerW` each; -1: none. */
  readonly circuit: number;
  readonly heatPerW: number;
}

export interface RoomPlan {
  /** UA, W/°C, and capacity over UA. */
  readonly heatLossWPerC: number;
  readonly timeConstantHours: number;
  readonly gainsW: number;
  readonly startC: number;
  /** 1: its sources heat; -1: they cool. */
  readonly sourceSign: 1 | -1;
  readonly sources: readonly HeatSource[];
}

/** Fills in how warm the room is at the end of each minute seen, °C. */
export type FillRoomC = (sight: Sight, roomC: Float64Array) => void;

/**
 * `C dT/dt = UA (outdoors − T) + gains ± sources`, exact for what is constant within a minute:
 * `T ← Te + (T − Te) e^(−1 min/τ)`, `Te = outdoors + (gains ± sources)/UA`, `τ = C/UA`.
 */
export function storedHeatRoom(plan: RoomPlan): FillRoomC {
  const kept = exp(-1 / (60 * plan.timeConstantHours));
  const sourcesW = new Float64Array(MOST_AT_ONCE);
  let lastC = plan.startC;
  return (sight, roomC) => {
    const { outdoors } = sight.run.draw.ambient;
    sourcesW.fill(0, 0, sight.count);
    for (const source of plan.sources) addHeat(source, sight, sourcesW);
    for (let m = 0; m < sight.count; m++) {
      const heading =
        outdoors[sight.minute + m]! + (plan.gainsW + plan.sourceSign * sourcesW[m]!) / plan.heatLossWPerC;
      roomC[m] = lastC = heading + (lastC - heading) * kept;
    }
  };
}

function addHeat(
  { thermostats, heatW, circuit, heatPerW }: HeatSource,
  sight: Sight,
  sourcesW: Float64Array,
): void {
  for (const i of thermostats) addShares(sourcesW, sight.ranShares(i), heatW, sight.count);
  if (circuit >= 0) addServed(sight, circuit, heatPerW, sourcesW);
}

function addServed(sight: Sight, circuit: number, perW: number, sum: Float64Array): void {
  const { circuits, thermostats } = sight.run.draw.usage;
  const { demandW } = circuits[circuit]!;
  const each = perW * sight.poweredShare(circuit);
  for (let m = 0; m < sight.count; m++) sum[m] = sum[m]! + each * demandW[sight.minute + m]!;
  for (let i = 0; i < thermostats.length; i++)
    if (thermostats[i]!.circuitIndex === circuit)
      addShares(sum, sight.ranShares(i), perW * thermostats[i]!.runningW, sight.count);
}

function addShares(sum: Float64Array, shares: Float64Array, each: number, count: number): void {
  for (let m = 0; m < count; m++) sum[m] = sum[m]! + each * shares[m]!;
}

/** The worst of the rooms that these thermostats keep. */
export function thermostatRoom(thermostats: readonly number[], sign: 1 | -1): FillRoomC {
  return ({ count, temperaturesC }, roomC) => {
    roomC.fill(-sign * Infinity, 0, count);
    for (const i of thermostats) {
      const each = temperaturesC(i);
      for (let m = 0; m < count; m++) if (sign * (each[m]! - roomC[m]!) > 0) roomC[m] = each[m]!;
    }
  };
}

/** Nothing heats or cools it: the rooms that appliances stand in. */
export function unheatedRoom(): FillRoomC {
  return ({ run, minute, count }, roomC) => {
    for (let m = 0; m < count; m++) roomC[m] = run.draw.ambient.indoors[minute + m]!;
  };
}
