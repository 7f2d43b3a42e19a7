/**
 * Panels against published examples.
 *
 * Grades: R1, R2 = read in one, two independent texts; C = recomputed from the cited formula; memory = printed value
 * from memory, kept only where a recomputation agrees.
 */
import { describe, expect, it } from 'vitest';
import { faimanCellC } from '../../packages/sim/src/power/cell-temperature.ts';
import { addArrayW, arrayDcW, clipToInput } from '../../packages/sim/src/power/solar-array.ts';
import { tinyScenario } from '../units/step/tiny-house.ts';

describe('cell temperature', () => {
  it.each([
    [1000, 25, 1, 56.407],
    [800, 20, 1, 45.126],
    [1000, 30, 0, 70],
    [600, 10, 5, 20.135],
  ])(
    'Faiman 2008 with U0 25, U1 6.84 (R1, values C): %d W/m², %d °C, %d m/s give %d °C',
    (plane, air, wind, cell) => {
      expect(faimanCellC(plane, air, wind, 25, 6.84)).toBeCloseTo(cell, 3);
    },
  );
});

describe('power and temperature', () => {
  it.each([
    ['linear model: 400 W, -0.35 %/°C, 65 °C (C)', 400, -0.0035, 65, 344],
    ['university exercise: 300 W losing 2 W/°C at 40 °C (R1+C)', 300, -2 / 300, 40, 270],
    ['Masters: 150 W, -0.5 %/°C at 64 °C (printed 121 from memory, 120.75 C)', 150, -0.005, 64, 120.75],
  ])('%s', (_, peakW, coefficient, cell, expected) => {
    expect(arrayDcW(1000, cell, peakW, coefficient, 0)).toBeCloseTo(expected, 9);
  });

  it('loses 0.14 where nothing is said: California Title 24 (2019), a list that multiplies to 0.14130, not to the sum 0.15 (R1+C)', () => {
    const losses = [0.02, 0.02, 0.005, 0.015, 0.01, 0.05, 0.03];
    const lossFraction = 1 - losses.reduce((kept, lost) => kept * (1 - lost), 1);
    const { arrays } = tinyScenario({ circuits: { lamp: {} } }).alternatives[0]!.household.units[0]!.solar!;
    expect(Math.abs(arrays[0]!.lossFraction - lossFraction)).toBeLessThan(0.0014);
  });
});

describe('clipping', () => {
  it('2, 5, 8, 8, 5, 2 kW × 0.96 into a 6 kW limit: 25.44 kWh used, 3.36 kWh clipped (C, exact)', () => {
    const availableW = Float32Array.from([2000, 5000, 8000, 8000, 5000, 2000], (dc) => dc * 0.96);
    const usableW = new Float32Array(6);
    clipToInput(availableW, 6000, usableW);
    expect([...usableW]).toEqual([1920, 4800, 6000, 6000, 4800, 1920]);
    const sum = (values: Float32Array): number => values.reduce((total, each) => total + each, 0);
    expect(sum(usableW)).toBe(25440);
    expect(sum(availableW) - sum(usableW)).toBe(3360);
  });
});

describe('an array over time', () => {
  const array = {
    peakW: 400,
    powerTemperatureCoefficientPerC: -0.0035,
    lossFraction: 0,
    openBackHeatLossU0: 25,
    windHeatLossU1: 6.84,
  };

  it('puts Faiman’s 70 °C at 1000 W/m², 30 °C and no wind through the linear model: 337 W (C); nothing under snow', () => {
    const outW = new Float32Array(4);
    addArrayW(
      Float32Array.of(1000, 0, 1000, 1000),
      Float32Array.of(30, 30, 30, 30),
      Float32Array.of(0, 0, 0, 0),
      Uint8Array.of(0, 0, 1, 0),
      array,
      outW,
    );
    expect([...outW]).toEqual([337, 0, 0, 337]);
  });

  it('adds to what another array on the same input gave', () => {
    const outW = Float32Array.of(100);
    addArrayW(Float32Array.of(1000), Float32Array.of(30), Float32Array.of(0), Uint8Array.of(0), array, outW);
    expect(outW[0]).toBe(437);
  });

  it('never gives less than nothing, however hot', () => {
    expect(arrayDcW(1000, 400, 400, -0.0035, 0)).toBe(0);
  });
});
