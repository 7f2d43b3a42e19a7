/** String voltage in cold and heat against the code table and worked examples. */
import { describe, expect, it } from 'vitest';
import { faimanCellC } from '../../packages/sim/src/power/cell-temperature.ts';
import {
  coldStringV,
  coldVoltageFactor,
  fewestInSeries,
  mostInSeries,
  stringV,
} from '../../packages/sim/src/power/string-voltage.ts';

describe('NEC 2017–2023 Table 690.7(A), crystalline silicon (three transcriptions agree)', () => {
  const rows: readonly (readonly [from: number, to: number, factor: number])[] = [
    [20, 24, 1.02],
    [15, 19, 1.04],
    [10, 14, 1.06],
    [5, 9, 1.08],
    [0, 4, 1.1],
    [-5, -1, 1.12],
    [-10, -6, 1.14],
    [-15, -11, 1.16],
    [-20, -16, 1.18],
    [-25, -21, 1.2],
    [-30, -26, 1.21],
    [-35, -31, 1.23],
    [-40, -36, 1.25],
  ];

  it('gives every row at every whole degree from 24 to -40 °C', () => {
    let compared = 0;
    for (const [from, to, factor] of rows)
      for (let c = from; c <= to; c++, compared++) expect(coldVoltageFactor(c), `${c} °C`).toBe(factor);
    expect(compared).toBe(65);
  });

  it('takes the colder row between whole degrees, 1 in warmth, and refuses what the table does not hold', () => {
    expect(coldVoltageFactor(4.5)).toBe(1.1);
    expect(coldVoltageFactor(-5.2)).toBe(1.14);
    expect(coldVoltageFactor(-23.3)).toBe(1.2); // -10 °F, worked example
    expect(coldVoltageFactor(25)).toBe(1);
    expect(() => coldVoltageFactor(-40.5)).toThrow(/ends at -40 °C; got -40.5/);
    expect(() => coldVoltageFactor(NaN)).toThrow(/^ambientC: found NaN; expected/);
  });
});

describe('worked string examples', () => {
  it.each([
    // source, V of one panel, relative coefficient, °C, in series, expected V, tolerance (as printed)
    ['Holt, illustrated guide to 690', 22.6, -0.075 / 22.6, -7, 1, 25.0, 0.005],
    ['Penn State AE 868', 38, (-0.0032 * 60) / 38, -23, 1, 47.2, 0.05],
    ['string of 14, coefficient method', 49.5, -0.0027, -10, 14, 758.5, 0.05],
    ['one panel, coefficient method', 45, -0.0028, 3, 1, 47.77, 0.005],
  ])('%s', (_, openCircuitV, perC, ambientC, inSeries, expected, tolerance) => {
    expect(Math.abs(coldStringV(openCircuitV, perC, ambientC, inSeries) - expected)).toBeLessThanOrEqual(
      tolerance,
    );
  });

  it('string of 14 by the table: 790.02 V at -10 °C', () => {
    expect(14 * 49.5 * coldVoltageFactor(-10)).toBeCloseTo(790.02, 9);
  });

  it('string length: 600 V and 42.87 V each make 13', () => {
    expect(mostInSeries(600, 42.87)).toBe(13);
  });
});

describe('working voltage in the heat', () => {
  it.each([
    // source, V of one panel at 25 °C, relative coefficient, cell °C, expected V, tolerance (as printed)
    ['training sheet on panel voltages, 55 °C', 35.4, -0.16 / 35.4, 55, 30.6, 0.005],
    ['training sheet on panel voltages, 70 °C', 36.4, -0.17 / 36.4, 70, 28.75, 0.005],
    ['the same sheet in the cold, open circuit at 0 °C', 45.8, -0.13 / 45.8, 0, 49.05, 0.005],
    ['string example on a web page, 45 °C', 41.2, -0.0028, 45, 38.9, 0.05],
  ])('%s', (_, ratedV, perC, cellC, expected, tolerance) => {
    expect(Math.abs(stringV(ratedV, perC, cellC, 1) - expected)).toBeLessThanOrEqual(tolerance);
  });

  it('fewest in series: 250 V and 26.1 V each make 10', () => {
    expect(fewestInSeries(250, 26.1)).toBe(10);
  });

  it('full sun and little wind lift cells 31 °C above the air (Faiman 2008), 34 °C by a label of 47.5 °C: 3 °C apart', () => {
    const rise = faimanCellC(1000, 40, 1, 25, 6.84) - 40;
    expect(rise).toBeCloseTo(1000 / 31.84, 9);
    expect(Math.abs(((47.5 - 20) * 1000) / 800 - rise)).toBeLessThan(3.1);
  });
});
