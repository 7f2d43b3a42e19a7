import { describe, expect, it } from 'vitest';
import {
  circuitOf,
  CLOCK_CHANGES,
  drawOf,
  planOf,
  startMinutes,
  type Written,
} from './household-under-test.ts';
import { createUsageDraw, type UsageBuffers } from '../../../packages/sim/src/usage/usage-buffers.ts';

const profile = { intervalMinutes: 15, watts: Array.from({ length: 288 }, (_, k) => k % 50) };
const everyKind: readonly Written[] = [
  { kind: 'steady', runningW: 12 },
  {
    kind: 'duty-cycled',
    runningW: 150,
    startingW: 900,
    onMinutes: 17,
    dutyFraction: 0.4,
    warmerPerC: 0.05,
    count: 2,
  },
  { kind: 'events', id: 'kettle', runningW: 1500, startingW: 1700, usesPerDay: 5, minutesPerUse: 6 },
  { kind: 'scheduled', runningW: 300, startingW: 800, windows: ['21:00-02:30'] },
  { kind: 'lights', runningW: 80, litFraction: 0.6 },
  { kind: 'measured', profile },
  {
    kind: 'thermostat',
    does: 'cools',
    runningW: 130,
    setC: 3,
    bandC: 0.5,
    timeConstantHours: 40,
    dutyFraction: 0.4,
    dutySurroundingsC: 21,
  },
];
const house = [circuitOf('one', ...everyKind), circuitOf('two', ...everyKind)];
const warming = (minute: number) => 19 + minute / 3000;

function numbersOf(draw: UsageBuffers, minutes = draw.minutes): unknown {
  return [
    draw.circuits.map((c) => [c.demandW.slice(0, minutes), c.startExtraW?.slice(0, minutes)]),
    draw.thermostats.map((t) => [t.startC, t.startCalling]),
  ];
}

describe('drawUsage', () => {
  it.each(CLOCK_CHANGES)('%s: a longer horizon extends a draw and alters nothing before', (_, setting) => {
    for (let index = 0; index < 5; index++) {
      const common = { ...setting, index, householdScatterFraction: 0.2, indoorsC: warming };
      const long = drawOf(house, { ...common, days: 6 });
      for (const minutes of [60, 1000, 1441, 4000]) {
        expect(numbersOf(drawOf(house, { ...common, minutes }))).toEqual(numbersOf(long, minutes));
      }
    }
  });

  it('is the same for the same seed and index, whatever was in the buffers, and differs between indices', () => {
    const setting = { days: 4, householdScatterFraction: 0.2 };
    const steady = { kind: 'steady', runningW: 40 };
    const all = [
      ...house,
      circuitOf('three', { ...steady, dayScatterFraction: 0 }),
      circuitOf('four', { ...steady, dayScatterFraction: 0.3 }),
      circuitOf('five'),
    ];
    const fresh = [0, 1].map((index) => numbersOf(drawOf(all, { ...setting, index })));
    const used = createUsageDraw(planOf(all, setting), 4 * 1440);
    drawOf(all, { ...setting, index: 7, start: [2026, 3, 6, 200] }, used);
    expect(numbersOf(drawOf(all, { ...setting, index: 1 }, used))).toEqual(fresh[1]);
    expect(numbersOf(drawOf(all, { ...setting, index: 0 }, used))).toEqual(fresh[0]);
    expect(fresh[0]).not.toEqual(fresh[1]);
  });

  it('leaves a circuit as it is when others come, go or change', () => {
    const alone = drawOf([house[0]!], { days: 3 });
    const together = drawOf([circuitOf('zero', ...everyKind), house[0]!, house[1]!], { days: 3 });
    expect(together.circuits[1]).toEqual(alone.circuits[0]);
  });

  it('wants for a circuit what each of its appliances would want there alone, in whatever order they stand', () => {
    const named = everyKind.map((each, k) => ({ ...each, id: `appliance-${k}` }));
    const setting = { days: 3, householdScatterFraction: 0.2 };
    const wattsOf = (...written: readonly Written[]) =>
      drawOf([circuitOf('one', ...written)], setting).circuits[0]!.demandW;
    const total = new Float32Array(3 * 1440);
    for (const each of named) wattsOf(each).forEach((watts, minute) => (total[minute]! += watts));
    for (let turn = 0; turn < named.length; turn++) {
      const turned = [...named.slice(turn), ...named.slice(0, turn)];
      expect(wattsOf(...turned)).toEqual(total);
      expect(wattsOf(...turned.reverse())).toEqual(total);
    }
  });

  it('gives two appliances of one id on a circuit their own lives', () => {
    const fridge: Written = {
      kind: 'duty-cycled',
      id: 'fridge',
      runningW: 100,
      startingW: 200,
      onMinutes: 15,
      dutyFraction: 0.3,
    };
    const starts = startMinutes(drawOf([circuitOf('kitchen', fridge, fridge)], { days: 1 }));
    const ofOne = startMinutes(drawOf([circuitOf('kitchen', fridge)], { days: 1 }));
    expect(starts.length).toBeGreaterThan(1.5 * ofOne.length);
  });

  it('never wants less than nothing, and starts never ask for less', () => {
    let compared = 0;
    for (const [, setting] of CLOCK_CHANGES) {
      const draw = drawOf(house, { ...setting, householdScatterFraction: 1 });
      for (const { demandW, startExtraW } of draw.circuits) {
        for (let m = 0; m < draw.minutes; m++)
          if (!(demandW[m]! >= 0) || !(startExtraW![m]! >= 0)) expect.fail(`minute ${m}`);
        compared += draw.minutes;
      }
    }
    expect(compared).toBeGreaterThan(50_000);
  });

  it('keeps the largest start of a minute', () => {
    const at = (startingW: number): Written => ({
      kind: 'scheduled',
      runningW: 100,
      startingW,
      windows: ['08:00-09:00'],
    });
    const draw = drawOf([circuitOf('pumps', at(500), at(900), at(300))], { days: 1 });
    expect(draw.circuits[0]!.startExtraW![480]).toBe(800);
  });

  it('has no row of starts where nothing starts', () => {
    const draw = drawOf([
      circuitOf('a', everyKind[0]!, everyKind[4]!),
      circuitOf('b', { kind: 'events', runningW: 9, usesPerDay: 2, minutesPerUse: 3 }),
    ]);
    expect(draw.circuits.map((c) => c.startExtraW)).toEqual([undefined, undefined]);
  });

  it('refuses a clock of another length than its buffers', () => {
    const buffers = createUsageDraw(planOf(house), 100);
    expect(() => drawOf(house, { minutes: 50 }, buffers)).toThrow(
      new RangeError('clock has 50 minutes, buffers have 100'),
    );
  });
});
