/** How warm a room is: one store of heat, by the household's own figures or as its thermostats carry it. MODEL.md §19.3. */
import { exp } from '../../portable/elementary.ts';
import type { Sight } from './watch-run.ts';

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

/**
 * `C dT/dt = UA (outdoors − T) + gains ± sources`, exact for what is constant within a minute:
 * `T ← Te + (T − Te) e^(−1 min/τ)`, `Te = outdoors + (gains ± sources)/UA`, `τ = C/UA`.
 */
export function storedHeatRoom(plan: RoomPlan): (sight: Sight) => number {
  const kept = exp(-1 / (60 * plan.timeConstantHours));
  let roomC = plan.startC;
  return (sight) => {
    let sourcesW = 0;
    for (const source of plan.sources) sourcesW += heatOf(source, sight);
    const outdoorsC = sight.run.draw.ambient.outdoors[sight.minute]!;
    const heading = outdoorsC + (plan.gainsW + plan.sourceSign * sourcesW) / plan.heatLossWPerC;
    roomC = heading + (roomC - heading) * kept;
    return roomC;
  };
}

function heatOf({ thermostats, heatW, circuit, heatPerW }: HeatSource, sight: Sight): number {
  let heat = 0;
  for (const i of thermostats) heat += heatW * sight.ranShare(i);
  return circuit < 0 ? heat : heat + heatPerW * servedW(sight, circuit);
}

function servedW({ run, minute, poweredShare, ranShare }: Sight, circuit: number): number {
  const { circuits, thermostats } = run.draw.usage;
  let watts = circuits[circuit]!.demandW[minute]! * poweredShare(circuit);
  for (let i = 0; i < thermostats.length; i++)
    if (thermostats[i]!.circuitIndex === circuit) watts += thermostats[i]!.runningW * ranShare(i);
  return watts;
}

/** The worst of the rooms that these thermostats keep. */
export function thermostatRoom(thermostats: readonly number[], sign: 1 | -1): (sight: Sight) => number {
  return ({ temperatureC }) => {
    let worst = -sign * Infinity;
    for (const i of thermostats) {
      const roomC = temperatureC(i);
      if (sign * (roomC - worst) > 0) worst = roomC;
    }
    return worst;
  };
}

/** Nothing heats or cools it: the rooms that appliances stand in. */
export function unheatedRoom(): (sight: Sight) => number {
  return ({ run, minute }) => run.draw.ambient.indoors[minute]!;
}
