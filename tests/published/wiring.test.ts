/** Wires, breakers, continuous loads, voltage drop and neutral currents against tables and worked examples. */
import { describe, expect, it } from 'vitest';
import {
  ampacityA,
  circularMils,
  cordAmpacityA,
  mostBreakerA,
  nextStandardA,
} from '../../packages/sim/src/power/conductors.ts';
import { leastRatingA } from '../../packages/sim/src/power/continuous-load.ts';
import { neutralA } from '../../packages/sim/src/power/neutral-current.ts';
import { voltageDropV } from '../../packages/sim/src/power/voltage-drop.ts';
import type { Awg } from '../../packages/sim/src/scenario/schema-wiring.ts';

const FOOT_M = 0.3048;

describe('NEC 2023 Table 310.16, copper, 30 °C, at most three wires carrying current (four transcriptions agree)', () => {
  const rows: readonly (readonly [Awg, at60A: number, at75A: number])[] = [
    [14, 15, 20],
    [12, 20, 25],
    [10, 30, 35],
    [8, 40, 50],
    [6, 55, 65],
    [4, 70, 85],
    [3, 85, 100],
    [2, 95, 115],
    [1, 110, 130],
    ['1/0', 125, 150],
    ['2/0', 145, 175],
    ['3/0', 165, 200],
    ['4/0', 195, 230],
  ];

  it.each(rows)('%s AWG: %i A at 60 °C, %i A at 75 °C', (awg, at60A, at75A) => {
    expect(ampacityA(awg, 60)).toBe(at60A);
    expect(ampacityA(awg, 75)).toBe(at75A);
  });

  it('holds no building wire below 14 AWG', () => {
    expect([ampacityA(16, 60), ampacityA(18, 75), mostBreakerA(16, 60)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('needs 3 AWG, not 4, for 100 A on 75 °C terminals (worked example, one text)', () => {
    expect(ampacityA(4, 75)).toBeLessThan(100);
    expect(ampacityA(3, 75)).toBeGreaterThanOrEqual(100);
  });
});

describe('breakers before wires', () => {
  it.each([
    // NEC 240.4(D), two texts: 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A, whatever the terminals
    [14, 75, 15],
    [12, 75, 20],
    [10, 75, 30],
    [14, 60, 15],
    [12, 60, 20],
    [10, 60, 30],
    // NEC 240.4(B), next standard size up: 4 AWG carries 85 A at 75 °C and may have 90 A (worked example, one text)
    [4, 75, 90],
    // 6 AWG carries 55 A at 60 °C; the standard sizes of 240.6(A) go from 50 to 60
    [6, 60, 60],
    [8, 60, 40],
  ] as const)('%s AWG at %i °C: %i A at most', (awg, terminalC, most) => {
    expect(mostBreakerA(awg, terminalC)).toBe(most);
  });

  it('finds the next of the standard sizes of NEC 240.6(A)', () => {
    expect([24, 25, 31.25, 46, 51].map(nextStandardA)).toEqual([25, 25, 35, 50, 60]);
    expect(nextStandardA(251)).toBeUndefined();
  });
});

describe('NEC Table 400.5(A)(1), cords with two wires carrying current', () => {
  it.each([
    // 18 to 12 AWG: two texts; 10 AWG: one text. 8 AWG and larger are from memory and not asserted here.
    [18, 10],
    [16, 13],
    [14, 18],
    [12, 25],
    [10, 30],
  ] as const)('%i AWG: %i A', (awg, amps) => {
    expect(cordAmpacityA(awg)).toBe(amps);
  });
});

describe('continuous loads: 125 % of what lasts three hours, 100 % of the rest (NEC 210.20(A), 215.3)', () => {
  it('16 A continuous and 4 A other ask for 24 A and get a 25 A breaker (worked example)', () => {
    expect(leastRatingA(16, 4)).toBe(24);
    expect(nextStandardA(leastRatingA(16, 4))).toBe(25);
  });

  it('2,400 W at 120 V for hours ask for 25 A (worked example, one text)', () => {
    expect(leastRatingA(2400 / 120)).toBe(25);
  });

  it.each([
    [15, 12],
    [20, 16],
    [30, 24],
    [40, 32],
    [50, 40],
    [60, 48],
    [100, 80],
  ])('a %i A breaker carries %i A for hours: the 80 %% rule is the same rule', (breakerA, mostA) => {
    expect(leastRatingA(mostA)).toBe(breakerA);
  });
});

describe('voltage drop', () => {
  it('20 A over 100 ft of 12 AWG at 120 V: 7.9 V, 6.6 % (worked example, K = 12.9)', () => {
    const drop = voltageDropV(20, 100 * FOOT_M, 12);
    expect(Math.abs(drop - 7.9)).toBeLessThanOrEqual(0.05);
    expect(Math.abs((drop / 120) * 100 - 6.6)).toBeLessThanOrEqual(0.05);
  });

  it('the same by Chapter 9, Table 9 (PVC, 2.0 Ω/kft): 8.00 V, within 1.5 %', () => {
    expect(Math.abs(voltageDropV(20, 100 * FOOT_M, 12) / 8 - 1)).toBeLessThan(0.015);
  });

  it('16 A over 100 ft of 12 AWG: 6.322 V by the same constant, 6.336 V by Table 8', () => {
    const drop = voltageDropV(16, 100 * FOOT_M, 12);
    expect(drop).toBeCloseTo(6.322, 3);
    expect(Math.abs(drop / 6.336 - 1)).toBeLessThan(0.003);
  });

  it('agrees with NEC Chapter 9, Table 8 (stranded copper, 75 °C, Ω per 1,000 ft) within 0.5 % at every size read', () => {
    const rows: readonly (readonly [Awg, ohmPerKft: number])[] = [
      [14, 3.14],
      [12, 1.98],
      [10, 1.24],
      [8, 0.778],
      [6, 0.491],
      [4, 0.308],
      [3, 0.245],
      [2, 0.194],
      [1, 0.154],
      ['1/0', 0.122],
    ];
    let compared = 0;
    for (const [awg, ohmPerKft] of rows) {
      const ohm = voltageDropV(1, 1000 * FOOT_M, awg) / 2;
      expect(Math.abs(ohm / ohmPerKft - 1), `${awg} AWG`).toBeLessThan(0.005);
      compared++;
    }
    expect(compared).toBe(10);
  });

  it('cross-sections follow the definition of the American wire gauge (ASTM B258): 5 mil · 92^((36 − n)/39), within 0.3 %', () => {
    const numbers: readonly (readonly [Awg, n: number])[] = [
      [18, 18],
      [16, 16],
      [14, 14],
      [12, 12],
      [10, 10],
      [8, 8],
      [6, 6],
      [4, 4],
      [3, 3],
      [2, 2],
      [1, 1],
      ['1/0', 0],
      ['2/0', -1],
      ['3/0', -2],
      ['4/0', -3],
    ];
    for (const [awg, n] of numbers) {
      const mils = 5 * 92 ** ((36 - n) / 39);
      expect(Math.abs(circularMils(awg) / mils ** 2 - 1), `${awg} AWG`).toBeLessThan(0.003);
    }
    expect(numbers).toHaveLength(15);
  });
});

describe('current in the neutral, unity power factor (worked examples of multiwire circuits, two texts)', () => {
  it.each([
    [15, 5, false, 10],
    [16, 10, false, 6],
    [15, 15, false, 0],
    [15, 15, true, 30], // one 120 V source on both legs: 30 A on a 15 A wire, and no breaker opens
    [20, 20, true, 40],
  ])('%i A and %i A, in step %s: %i A', (firstA, secondA, inStep, expected) => {
    expect(neutralA(firstA, secondA, inStep)).toBe(expected);
  });
});
