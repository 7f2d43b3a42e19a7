/** A room as one store of heat: the closed form, and the room that a thermostat carries. */
import { describe, expect, it } from 'vitest';
import {
  storedHeatRoom,
  thermostatRoom,
} from '../../../../packages/sim/src/advice/needs/room-temperature.ts';
import { watchRun, type Sight } from '../../../../packages/sim/src/advice/needs/watch-run.ts';
import { startTinyRun, tinyDraw } from '../../step/tiny-house.ts';

const outdoorsAt = (outdoorsC: number): Sight =>
  ({
    run: {
      draw: {
        ambient: { outdoors: { 0: outdoorsC } },
        usage: { circuits: [{ demandW: [1500] }], thermostats: [] },
      },
    },
    minute: 0,
    poweredShare: () => 1,
  }) as unknown as Sight;

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
    for (let m = 1; m <= 2400; m++) {
      const roomC = room(outdoorsAt(-10));
      expect(roomC).toBeCloseTo(-10 + 30 * Math.exp(-m / 1200), 9);
    }
  });

  it('with steady heat settles at outdoors + (heat + gains)/UA; an electric heater gives what it is served', () => {
    const heater = { thermostats: [], heatW: 0, circuit: 0, heatPerW: 1 };
    const room = storedHeatRoom({ ...bare, gainsW: 500, sources: [heater] });
    let roomC = 0;
    for (let m = 0; m < 40_000; m++) roomC = room(outdoorsAt(5));
    expect(roomC).toBeCloseTo(5 + 2000 / 200, 6);
    const cooled = storedHeatRoom({ ...bare, sourceSign: -1, sources: [{ ...heater, heatPerW: 3 }] });
    for (let m = 0; m < 40_000; m++) roomC = cooled(outdoorsAt(40));
    expect(roomC).toBeCloseTo(40 - 4500 / 200, 6);
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
    let apart = 0;
    let coldest = Infinity;
    watchRun(run, run.draw.minutes, (sight) => {
      const [t, h] = [byThermostat(sight), byHeat(sight)];
      apart = Math.max(apart, Math.abs(t - h));
      coldest = Math.min(coldest, h);
    });
    expect(apart).toBeLessThan(0.2);
    expect(coldest).toBeLessThan(18.5);
  });
});
