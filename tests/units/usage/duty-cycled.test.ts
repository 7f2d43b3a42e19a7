import { describe, expect, it } from 'vitest';
import { dutyAt, planDutyCycled } from '../../../packages/sim/src/usage/duty-cycled.ts';
import {
  circuitOf,
  drawOf,
  scatterOf,
  startMinutes,
  sum,
  wattHours,
  type Written,
} from './household-under-test.ts';

const fridge: Written = {
  kind: 'duty-cycled',
  runningW: 150,
  startingW: 900,
  onMinutes: 15,
  dutyFraction: 0.35,
  dayScatterFraction: 0,
};

describe('a duty-cycled appliance', () => {
  it('uses watts × duty in the long run, to half a percent over a year', () => {
    const draw = drawOf([circuitOf('kitchen', fridge)], { days: 365 });
    expect(wattHours(draw) / (150 * 0.35 * 24 * 365)).toBeCloseTo(1, 2);
    expect(Math.abs(wattHours(draw) / (150 * 0.35 * 24 * 365) - 1)).toBeLessThan(0.005);
  });

  it('runs for onMinutes at a time, with one start a run', () => {
    const draw = drawOf([circuitOf('kitchen', fridge)], { days: 30 });
    const starts = startMinutes(draw);
    const { demandW, startExtraW } = draw.circuits[0]!;
    expect(starts.length).toBeGreaterThan(900);
    starts.slice(0, -1).forEach((start, k) => {
      expect(sum(demandW.slice(start, starts[k + 1]))).toBeCloseTo(15 * 150, 0);
      expect(startExtraW![start]).toBe(750);
    });
  });

  it('jitters its off times by at most a quarter, about their mean', () => {
    const starts = startMinutes(drawOf([circuitOf('kitchen', fridge)], { days: 60 }));
    const offs = starts.slice(1).map((start, k) => start - starts[k]! - 15);
    const offMean = 15 * (1 / 0.35 - 1);
    expect(Math.min(...offs)).toBeGreaterThan(0.75 * offMean - 1);
    expect(Math.max(...offs)).toBeLessThan(1.25 * offMean + 1);
    expect(new Set(offs).size).toBeGreaterThan(10);
  });

  it('works harder once its room has turned warmer: from then on 1 + warmerPerC times the difference', () => {
    const days = 120;
    const warms = { ...fridge, warmerPerC: 0.05 };
    const indoorsC = (minute: number) => (minute < days * 720 ? 21 : 31);
    const { demandW } = drawOf([circuitOf('kitchen', warms)], { days, indoorsC }).circuits[0]!;
    const share = (from: number, to: number) => sum(demandW.subarray(from, to)) / (150 * (to - from));
    expect(Math.abs(share(0, days * 720) / 0.35 - 1)).toBeLessThan(0.01);
    expect(Math.abs(share(days * 720, days * 1440) / (0.35 * 1.5) - 1)).toBeLessThan(0.01);
  });

  it('has a factor of its own for each day: daily energies scatter by dayScatterFraction about the same mean', () => {
    const days = 400;
    const draw = drawOf([circuitOf('kitchen', { ...fridge, dayScatterFraction: 0.3 })], { days });
    const { mean, spread } = scatterOf(draw.circuits[0]!.demandW, days);
    expect(Math.abs(mean / (150 * 0.35 * 1440) - 1)).toBeLessThan(0.045); // three standard errors
    expect(Math.abs(spread - 0.3)).toBeLessThan(0.06);
  });

  it('of the lowest duty cuts off no quiet days: the mean stays what it is', () => {
    const days = 1500;
    const seldom = { ...fridge, onMinutes: 1, dutyFraction: 0.02, dayScatterFraction: 0.3 };
    const { mean } = scatterOf(drawOf([circuitOf('kitchen', seldom)], { days }).circuits[0]!.demandW, days);
    expect(Math.abs(mean / (150 * 0.02 * 1440) - 1)).toBeLessThan(0.03); // 0.12 with a floor at the duty itself
  });

  it('is caught at a random phase: at minute 0 it runs with the chance of its duty', () => {
    let running = 0;
    const n = 1500;
    const circuits = [circuitOf('kitchen', { ...fridge, onMinutes: 40 })];
    for (let index = 0; index < n; index++) {
      if (drawOf(circuits, { minutes: 2, index }).circuits[0]!.demandW[0]! > 75) running++;
    }
    expect(Math.abs(running / n - 0.35)).toBeLessThan(5 * Math.sqrt((0.35 * 0.65) / n));
  });

  it('works harder in a warm room and less in a cold one', () => {
    const circuits = [circuitOf('kitchen', { ...fridge, warmerPerC: 0.04 })];
    const at = (roomC: number) => wattHours(drawOf(circuits, { days: 60, indoorsC: () => roomC }));
    expect(at(31) / at(21)).toBeCloseTo(1.4, 1);
    expect(at(11) / at(21)).toBeCloseTo(0.6, 1);
  });

  it('never stops at a duty of 1 and then has no starts', () => {
    const draw = drawOf([circuitOf('kitchen', { ...fridge, dutyFraction: 1 })], { days: 3 });
    expect(startMinutes(draw)).toEqual([]);
    for (const watts of draw.circuits[0]!.demandW) expect(watts).toBeCloseTo(150, 3);
  });

  it('keeps a duty between a fiftieth and all the time, however the room turns', () => {
    const written = circuitOf('kitchen', { ...fridge, warmerPerC: 0.1 }).appliances[0]!;
    if (written.kind !== 'duty-cycled') throw new Error('not what was written');
    const plan = planDutyCycled(written, 21);
    expect([dutyAt(plan, 60, 1), dutyAt(plan, -20, 1), dutyAt(plan, 21, 1)]).toEqual([1, 0.02, 0.35]);
  });

  it('runs each of several in its own time, the first as if it were alone', () => {
    const one = drawOf([circuitOf('kitchen', fridge)], { days: 2 }).circuits[0]!.demandW;
    const two = drawOf([circuitOf('kitchen', { ...fridge, count: 2 })], { days: 2 }).circuits[0]!.demandW;
    const second = two.map((watts, m) => watts - one[m]!);
    expect(Math.min(...second)).toBeGreaterThanOrEqual(-1e-4);
    expect(Math.max(...second)).toBeCloseTo(150, 3);
    expect([...second]).not.toEqual([...one]);
  });
});
