import { describe, expect, it } from 'vitest';
import { drawableFraction, floorFraction } from '../../../packages/sim/src/power/cold.ts';

const POINTS: [number, number][] = [
  [-20, 0.6],
  [-10, 0.75],
  [0, 0.85],
  [25, 1],
];

describe('drawableFraction', () => {
  it.each([
    [-40, 0.6],
    [-20, 0.6],
    [-15, 0.675],
    [-10, 0.75],
    [0, 0.85],
    [12.5, 0.925],
    [25, 1],
    [60, 1],
  ])('at %f °C is %f: straight between the points, flat outside', (temperatureC, fraction) => {
    expect(drawableFraction(POINTS, temperatureC)).toBeCloseTo(fraction, 12);
  });
});

describe('a bank that never gives all it has', () => {
  it('keeps its last share above its last temperature', () => {
    const points: [number, number][] = [
      [-10, 0.7],
      [20, 0.95],
    ];
    expect([5, 20, 40].map((placeC) => drawableFraction(points, placeC))).toEqual([0.825, 0.95, 0.95]);
  });
});

describe('floorFraction', () => {
  it('is the cut-off when nothing is hidden, and full when everything is', () => {
    expect(floorFraction(0.1, 1)).toBeCloseTo(0.1, 12);
    expect(floorFraction(0.1, 0)).toBe(1);
  });

  it('leaves the cut-off’s share of what can be drawn on top of what cannot', () => {
    expect(floorFraction(0.2, 0.75)).toBeCloseTo(0.25 + 0.15, 12);
  });
});
