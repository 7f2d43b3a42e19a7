import { describe, expect, it } from 'vitest';
import { applianceFaults } from '../../../packages/sim/src/usage/appliance-faults.ts';
import { appliance as schema } from '../../../packages/sim/src/scenario/schema.ts';
import { thermostatFault } from '../../../packages/sim/src/usage/thermostat-fault.ts';
import { circuitOf, drawOf, type Setting, type Written } from './household-under-test.ts';

const fridge: Written = {
  kind: 'thermostat',
  does: 'cools',
  runningW: 130,
  startingW: 780,
  setC: 3,
  bandC: 0.5,
  timeConstantHours: 40,
  dutyFraction: 0.4,
  dutySurroundingsC: 21,
  surroundingsOffsetC: 2,
  limitC: 4.4,
};
const heating: Written = {
  kind: 'thermostat',
  does: 'heats',
  runningW: 500,
  setC: 20,
  bandC: 0.5,
  surroundings: 'outdoors',
  timeConstantHours: 20,
  dutyFraction: 0.5,
  dutySurroundingsC: -10,
};
const wantOf = (written: Written, setting: Setting = {}) =>
  drawOf([circuitOf('x', written)], { minutes: 60, ...setting }).thermostats[0]!;
const faultOf = (written: Written) => {
  const checked = schema.parse(written);
  return checked.kind === 'thermostat' ? thermostatFault(checked) : 'not a thermostat';
};

describe('a thermostat', () => {
  it('pulls so that duty × pull balances the drift at its stated surroundings', () => {
    const want = wantOf(fridge);
    expect(want.pullCPerMinute * 0.4).toBeCloseTo((21 + 2 - 3) / (40 * 60), 12);
    expect(want).toMatchObject({
      circuitIndex: 0,
      applianceIndex: 0,
      runningW: 130,
      startExtraW: 650,
      sign: 1,
      timeConstantMinutes: 2400,
      limitC: 4.4,
    });
    expect(wantOf(heating)).toMatchObject({
      sign: -1,
      surroundings: 'outdoors',
      startExtraW: 0,
      limitC: undefined,
    });
    expect(wantOf(heating).pullCPerMinute).toBeCloseTo(30 / 1200 / 0.5, 12);
  });

  it('starts anywhere in its band, calling with the chance of its duty in the surroundings it is in', () => {
    const n = 2000;
    const wants = Array.from({ length: n }, (_, index) => ({
      ...wantOf(fridge, { index, indoorsC: () => 11 }),
    }));
    const position = wants.map((want) => (want.startC - 2.5) / 1);
    const mean = position.reduce((a, b) => a + b) / n;
    const calling = wants.filter((want) => want.startCalling).length / n;
    expect(Math.min(...position)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...position)).toBeLessThanOrEqual(1);
    expect(Math.abs(mean - 0.5)).toBeLessThan(5 / Math.sqrt(12 * n));
    expect(Math.abs(calling - 0.2)).toBeLessThan(5 * Math.sqrt(0.16 / n)); // half the difference to its set point, half the duty
  });

  it('does not call where its surroundings do its work, and always where they overcome it', () => {
    for (let index = 0; index < 200; index++) {
      expect(wantOf(heating, { index, outdoorsC: 25 }).startCalling).toBe(false);
      expect(wantOf(heating, { index, outdoorsC: -60 }).startCalling).toBe(true);
      // 10 °C of gains on 63 °C ask for all it has: (63 + 10 - 3) / (21 + 10 - 3) × 0.4 = 1
      const gains = { ...fridge, surroundingsOffsetC: 10 };
      expect(wantOf(gains, { index, indoorsC: () => 63 }).startCalling).toBe(true);
    }
  });

  it('is there once for each of several, each with its own start', () => {
    const { thermostats } = drawOf(
      [circuitOf('a', { kind: 'steady', runningW: 1 }), circuitOf('b', heating, { ...fridge, count: 3 })],
      { minutes: 60 },
    );
    expect(thermostats.map((want) => [want.circuitIndex, want.applianceIndex])).toEqual([
      [1, 0],
      [1, 1],
      [1, 1],
      [1, 1],
    ]);
    expect(new Set(thermostats.map((want) => want.startC)).size).toBe(4);
  });

  it('adds nothing to its circuit’s demand: its power follows its temperature', () => {
    const circuit = drawOf([circuitOf('x', fridge)], { minutes: 60 }).circuits[0]!;
    expect(Math.max(...circuit.demandW)).toBe(0);
    expect(circuit.startExtraW).toBeUndefined();
  });
});

describe('thermostatFault', () => {
  it('refuses a time constant below the step of the simulation', () => {
    expect(faultOf({ ...heating, timeConstantHours: 0.01, bandC: 10 })).toContain('less than a minute');
  });

  it('finds nothing wrong with a sound one', () => {
    expect(faultOf(fridge)).toBeUndefined();
    expect(faultOf(heating)).toBeUndefined();
  });

  it('tells a cooler whose stated surroundings are too cold', () => {
    expect(faultOf({ ...fridge, dutySurroundingsC: 1 })).toMatchInlineSnapshot(
      `"it cools to 3 °C and starts at 3.5 °C, so it runs only in warmer surroundings; dutySurroundingsC with surroundingsOffsetC makes 3 °C: raise dutySurroundingsC or change setC"`,
    );
  });

  it('tells a heater whose stated surroundings are too warm', () => {
    expect(faultOf({ ...heating, dutySurroundingsC: 25 })).toMatchInlineSnapshot(
      `"it heats to 20 °C and starts at 19.5 °C, so it runs only in colder surroundings; dutySurroundingsC with surroundingsOffsetC makes 25 °C: lower dutySurroundingsC or change setC"`,
    );
  });

  it('tells a limit inside the band', () => {
    expect(faultOf({ ...fridge, limitC: 3.2 })).toMatchInlineSnapshot(
      `"its limitC of 3.2 °C is reached before it starts at 3.5 °C, so its need would be unmet in every cycle: move limitC above 3.5 °C or narrow bandC"`,
    );
  });

  it('tells a band that is crossed within a minute', () => {
    expect(faultOf({ ...fridge, timeConstantHours: 0.1 })).toMatchInlineSnapshot(
      `"it crosses its band of 1 °C within a minute, the step of the simulation: widen bandC or check timeConstantHours (0.1 h)"`,
    );
  });
});

describe('applianceFaults', () => {
  const faults = (written: Written) => applianceFaults(schema.parse(written));
  it('finds nothing wrong with a sound appliance', () => {
    expect(faults(fridge)).toEqual([]);
    expect(faults({ kind: 'steady', runningW: 5 })).toEqual([]);
    expect(faults({ kind: 'events', runningW: 5, usesPerDay: 3, minutesPerUse: 2 })).toEqual([]);
  });

  it('tells every fault at once', () => {
    expect(
      faults({
        kind: 'events',
        runningW: 500,
        startingW: 400,
        usesPerDay: 300,
        minutesPerUse: 10,
        hourWeights: new Array(24).fill(0),
      }),
    ).toMatchInlineSnapshot(`
      [
        "its startingW (400 W) is below its runningW (500 W): give the whole draw of a start, not what it adds",
        "all its hourWeights are 0, so its uses fall in no hour: give at least one hour some weight",
        "300 uses of 10 minutes do not fit into a day one after another: lower usesPerDay or minutesPerUse, or give several with count",
      ]
    `);
    expect(faults({ ...fridge, dutySurroundingsC: 1 })).toHaveLength(1);
    expect(faults({ kind: 'duty-cycled', runningW: 5, onMinutes: 0.01, dutyFraction: 0.5 })).toEqual([
      'its runs of 0.01 minutes are too short to follow: give onMinutes of 0.1 or more',
    ]);
  });
});
