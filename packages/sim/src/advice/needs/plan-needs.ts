/** From needs as written to measures of a run. */
import { circuitsServing } from '../../scenario/needs-of.ts';
import type { Circuit, HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import type { NeedSpec } from '../../scenario/schema-needs.ts';
import type { Run } from '../../step/run.ts';
import { nameplateW } from '../../usage/nameplate.ts';
import type { Measure } from './measure.ts';
import { measureCold } from './measure-cold.ts';
import { measurePower } from './measure-power.ts';
import { measureRoom } from './measure-room.ts';
import { measureWater, type Pump } from './measure-water.ts';
import { storedHeatRoom, thermostatRoom, unheatedRoom, type FillRoomC } from './room-temperature.ts';

type RoomNeed = Extract<NeedSpec, { measure: 'warmth' | 'coolth' }>;

/** A fresh measure of a need for a run of this household, at its first minute. */
export function measureOf(
  need: NeedSpec,
  { circuits }: HouseholdSpec,
  { site }: Scenario,
  run: Run,
): Measure {
  const ids = circuitsServing(need, circuits);
  const positions = ids.map((id) => circuits.findIndex((c) => c.id === id)).filter((c) => c >= 0);
  const { thermostats } = run.draw.usage;
  const among = (sign: 1 | -1, of: readonly number[]) =>
    [...thermostats.keys()].filter(
      (i) => thermostats[i]!.sign === sign && of.includes(thermostats[i]!.circuitIndex),
    );
  switch (need.measure) {
    case 'cold':
      return measureCold({
        stores: among(1, positions),
        limitC: need.limitC,
        borneMinutes: 60 * need.hoursAbove,
      });
    case 'water':
      return measureWater({
        ...need,
        pumps: positions.map((circuit) => pumpOn(circuits[circuit]!, circuit)),
        litresPerMinuteNeeded: (need.persons * need.litresPerPersonPerDay) / 1440,
        borneMinutes: 60 * need.hoursWithout,
      });
    case 'power':
      return measurePower(
        positions.map((circuit) => ({
          circuit,
          thermostats: [...among(1, [circuit]), ...among(-1, [circuit])],
          graceMinutes: need.graceMinutes ?? circuits[circuit]!.graceMinutes,
        })),
      );
    case 'warmth':
    case 'coolth': {
      const sign = need.measure === 'coolth' ? 1 : -1;
      const at = (id: string) => circuits.findIndex((c) => c.id === id);
      const fillRoomC = fillRoomOf(need, sign, among, positions, at, site.indoorC);
      return measureRoom({ sign, limitC: need.limitC, borneMinutes: 60 * need.hoursBeyond, fillRoomC });
    }
  }
}

/** The pump is what asks for most on its circuit. */
function pumpOn({ appliances }: Circuit, circuit: number): Pump {
  const eachW = appliances.map((a) => nameplateW(a) / (a.kind === 'measured' ? 1 : a.count));
  const runningW = Math.max(...eachW);
  const allW = appliances.reduce((sum, a) => sum + nameplateW(a), 0);
  const pumpW = nameplateW(appliances[eachW.indexOf(runningW)]!);
  return { circuit, runningW, othersW: allW - pumpW };
}

function fillRoomOf(
  { room }: RoomNeed,
  sign: 1 | -1,
  among: (sign: 1 | -1, circuits: readonly number[]) => number[],
  circuits: readonly number[],
  at: (id: string) => number,
  indoorC: number,
): FillRoomC {
  if (room === undefined) {
    const thermostats = among(sign, circuits);
    return thermostats.length > 0 ? thermostatRoom(thermostats, sign) : unheatedRoom();
  }
  return storedHeatRoom({
    ...room,
    startC: room.startC ?? indoorC,
    sourceSign: sign === 1 ? -1 : 1,
    sources: room.sources.map(({ circuit, heatW, heatPerW }) => ({
      thermostats: heatW === undefined ? [] : among(sign, [at(circuit)]),
      heatW: heatW ?? 0,
      circuit: heatPerW === undefined ? -1 : at(circuit),
      heatPerW: heatPerW ?? 0,
    })),
  });
}
