/** A room as one store of heat: the closed form, and the room that a thermostat carries. */
import { describe, expect, it } from 'vitest';
import {
  storedHeatRoom,
  thermostatRoom,
  type FillRoomC,
} from '../../../../packages/sim/src/advice/needs/room-temperature.ts';
import { MOST_AT_ONCE, watchRun, type Sight } from '../../../../packages/sim/src/advice/needs/watch-run.ts';
import { startTinyRun, tinyDraw } from '../../step/tiny-house.ts';

/** So many minutes at that temperature outdoors, and 1500 W served. */
const minutesAt = (outdoorsC: number, count: number): Sight =>
  ({
    run: {
      draw: {
        ambient: { outdoors: new Float32Array(count).fill(outdoorsC) },
        usage: { circuits: [{ demandW: new Float32Array(count).fill(1500) }], thermostats: [] },
      },
    },
    minute: 0,
    count,
    poweredShare: () => 1,
  }) as unknown as Sight;

/** How warm the room is at the end of each of `minutes`, shown a hundred at a time. */
function lived(fillRoomC: FillRoomC, outdoorsC: number, minutes: number): number[] {
  const roomC = new Float64Array(100);
  return Array.from({ length: minutes / 100 }, () => {
    fillRoomC(minutesAt(outdoorsC, 100), roomC);
    return [...roomC];
  }).flat();
}

const bare = {
  heatLossWPerC: 200,
  timeConstantHours: 20,
  gainsW: 0,
  startC: 20,
  sourceSign: 1,
  sources: [],
} as const;

describe('storedHeatRoom', () => {
  it('without heat falls to the outdoors by e^(−t/τ), exactly', () => {
    const room = storedHeatRoom(bare);
    lived(room, -10, 2400).forEach((roomC, m) => {
      expect(roomC).toBeCloseTo(-10 + 30 * Math.exp(-(m + 1) / 1200), 9);
    });
  });

  it('with steady heat settles at outdoors + (heat + gains)/UA; an electric heater gives what it is served', () => {
    const heater = { thermostats: [], heatW: 0, circuit: 0, heatPerW: 1 };
    const room = storedHeatRoom({ ...bare, gainsW: 500, sources: [heater] });
    expect(lived(room, 5, 40_000).at(-1)).toBeCloseTo(5 + 2000 / 200, 6);
    const cooled = storedHeatRoom({ ...bare, sourceSign: -1, sources: [{ ...heater, heatPerW: 3 }] });
    expect(lived(cooled, 40, 40_000).at(-1)).toBeCloseTo(40 - 4500 / 200, 6);
  });

  it('with the same house as a furnace’s thermostat keeps the same warmth: within 0.2 °C over ten days, for a thermostat reads the outdoors once an hour', () => {
    const furnace = {
      kind: 'thermostat',
      does: 'heats',
      runningW: 300,
      setC: 20,
      bandC: 0.25,
      surroundings: 'outdoors',
      surroundingsOffsetC: 3,
      timeConstantHours: 20,
      dutyFraction: 0.5,
      dutySurroundingsC: -10,
    } as const;
    // the bank runs dry: part of the ten days is without heat
    const tiny = tinyDraw({
      circuits: { furnace: { appliances: [furnace] } },
      units: [{ capacityWh: 3000 }],
      hours: 240,
    });
    const run = startTinyRun(tiny);
    const want = run.draw.usage.thermostats[0]!;
    const byThermostat = thermostatRoom([0], -1);
    const byHeat = storedHeatRoom({
      heatLossWPerC: 150,
      timeConstantHours: 20,
      gainsW: 150 * 3,
      startC: want.startC,
      sourceSign: 1,
      sources: [
        {
          thermostats: [0],
          heatW: 150 * want.pullCPerMinute * want.timeConstantMinutes,
          circuit: -1,
          heatPerW: 0,
        },
      ],
    });
    const [t, h] = [new Float64Array(MOST_AT_ONCE), new Float64Array(MOST_AT_ONCE)];
    let apart = 0;
    let coldest = Infinity;
    watchRun(run, run.draw.minutes, (sight) => {
      byThermostat(sight, t);
      byHeat(sight, h);
      for (let m = 0; m < sight.count; m++) {
        apart = Math.max(apart, Math.abs(t[m]! - h[m]!));
        coldest = Math.min(coldest, h[m]!);
      }
    });
    expect(apart).toBeLessThan(0.2);
    expect(coldest).toBeLessThan(18.5);
  });
});
