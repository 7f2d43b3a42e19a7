/** The portable functions: as good as the engine's own, and the same bits in every engine, for ever. */
import { describe, expect, it } from 'vitest';
import {
  acos,
  atan,
  atan2,
  cos,
  exp,
  log,
  power,
  sin,
  tan,
} from '../../../packages/sim/src/portable/elementary.ts';

const SAMPLES = 100_000;
const GOLDEN = 0.6180339887498949; // steps of the golden ratio fill an interval evenly

const bits = new DataView(new ArrayBuffer(8));
function bitsOf(x: number): bigint {
  bits.setFloat64(0, x);
  return bits.getBigUint64(0);
}
const hexOf = (x: number): string => bitsOf(x).toString(16).padStart(16, '0');

/** How many doubles apart: units in the last place. */
function unitsApart(a: number, b: number): number {
  if (a === b) return 0;
  if (Math.sign(a) !== Math.sign(b)) return Infinity;
  const difference = bitsOf(a) - bitsOf(b);
  return Number(difference < 0n ? -difference : difference);
}

interface Worst {
  readonly units: number;
  readonly at: number;
  readonly absolute: number;
}

function worstOver(
  ours: (x: number) => number,
  engine: (x: number) => number,
  from: number,
  to: number,
): Worst {
  let worst: Worst = { units: 0, at: NaN, absolute: 0 };
  for (let i = 0; i < SAMPLES; i++) {
    const x = from + (to - from) * ((i * GOLDEN) % 1);
    const units = unitsApart(ours(x), engine(x));
    const absolute = Math.max(worst.absolute, Math.abs(ours(x) - engine(x)));
    worst = units > worst.units ? { units, at: x, absolute } : { ...worst, absolute };
  }
  return worst;
}

describe('against the engine’s own, which is itself within 1 unit in the last place', () => {
  it.each([
    ['exp', -708, 709, 2, exp, Math.exp],
    ['exp', -1, 1, 2, exp, Math.exp],
    ['log', 1e-9, 1e-3, 2, log, Math.log],
    ['log', 0.5, 2, 2, log, Math.log],
    ['log', 2, 1e12, 2, log, Math.log],
    ['sin', -3, 3, 2, sin, Math.sin],
    ['cos', -1.5, 1.5, 2, cos, Math.cos],
    ['atan', -10, 10, 2, atan, Math.atan],
    ['atan', -1e9, 1e9, 2, atan, Math.atan],
    // each of two or three rounded steps
    ['tan', -1.5, 1.5, 3, tan, Math.tan],
    ['acos', -1, 1, 3, acos, Math.acos],
  ] as const)('%s from %d to %d: within %d units in the last place', (_, from, to, units, ours, engine) => {
    const worst = worstOver(ours, engine, from, to);
    expect(worst.units, `at ${worst.at}`).toBeLessThanOrEqual(units);
  });

  it('sin and cos are within 3e-16 over a turn either way', () => {
    expect(worstOver(sin, Math.sin, -7, 7).absolute).toBeLessThan(3e-16);
    expect(worstOver(cos, Math.cos, -7, 7).absolute).toBeLessThan(3e-16);
  });

  it('sin and cos stay within 3e-15 of the engine out to a million radians', () => {
    expect(worstOver(sin, Math.sin, -1e6, 1e6).absolute).toBeLessThan(3e-15);
    expect(worstOver(cos, Math.cos, -1e6, 1e6).absolute).toBeLessThan(3e-15);
  });

  it('sin and cos keep 2 units in the last place over a turn either way', () => {
    expect(worstOver(sin, Math.sin, -7, 7).units).toBeLessThanOrEqual(2);
    expect(worstOver(cos, Math.cos, -7, 7).units).toBeLessThanOrEqual(2);
  });
  it('sin and cos keep 2 units in the last place out to a million radians', () => {
    expect(worstOver(sin, Math.sin, -1e6, 1e6).units).toBeLessThanOrEqual(2);
    expect(worstOver(cos, Math.cos, -1e6, 1e6).units).toBeLessThanOrEqual(2);
  });

  it('atan2 agrees within 2 all round the circle', () => {
    let worst = 0;
    for (let i = 0; i < SAMPLES; i++) {
      const [y, x] = [Math.sin(i * 1.1) * 100, Math.cos(i * 2.3) * 3];
      worst = Math.max(worst, unitsApart(atan2(y, x), Math.atan2(y, x)));
    }
    expect(worst).toBeLessThanOrEqual(2);
  });

  it('power is within 2.5e-16 (1 + |y ln x|), relative', () => {
    let worst = 0;
    for (let i = 0; i < SAMPLES; i++) {
      const x = 1e-3 + 1e3 * ((i * GOLDEN) % 1);
      const y = ((i * 0.7548776662466927) % 1) * 20 - 10;
      const error = Math.abs(power(x, y) / Math.pow(x, y) - 1);
      worst = Math.max(worst, error / (1 + Math.abs(y * Math.log(x))));
    }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(2.5e-16);
  });
});

describe('at the ends', () => {
  it.each([
    ['exp(-709)', exp(-709), 0],
    ['exp(710)', exp(710), Infinity],
    ['exp(0)', exp(0), 1],
    ['log(0)', log(0), -Infinity],
    ['log(-1)', log(-1), NaN],
    ['log(1)', log(1), 0],
    ['log(5e-324)', log(5e-324), Math.log(5e-324)],
    ['power(0, 0)', power(0, 0), 1],
    ['power(0, 2)', power(0, 2), 0],
    ['power(0, -1)', power(0, -1), Infinity],
    ['sin(0)', sin(0), 0],
    ['cos(0)', cos(0), 1],
    ['acos(-2)', acos(-2), Math.PI],
    ['atan2(0, -1)', atan2(0, -1), Math.PI],
    ['atan2(-1, 0)', atan2(-1, 0), -Math.PI / 2],
    ['atan2(0, 0)', atan2(0, 0), 0],
  ])('%s', (_, actual, expected) => {
    expect(actual).toBe(expected);
  });
});

/** Not "true" but "unchanged": these bits are part of every published number and move only with a version. */
describe('unchanged: exact bits', () => {
  it.each([
    ['exp(1)', exp(1), '4005bf0a8b14576a'],
    ['exp(-0.057)', exp(-0.057), '3fee3a1d577d97be'],
    ['exp(-20.25)', exp(-20.25), '3e1b93de1e27ca3b'],
    ['exp(300.7)', exp(300.7), '5b0c3714f17ae742'],
    ['log(2)', log(2), '3fe62e42fefa39ef'],
    ['log(0.1)', log(0.1), 'c0026bb1bbb55515'],
    ['log(1e-300)', log(1e-300), 'c085963447f87fb5'],
    ['log(1367)', log(1367), '401ce1a9add67e5e'],
    ['power(0.63, 1.7)', power(0.63, 1.7), '3fdd2da053722891'],
    ['power(96.07995, -1.6364)', power(96.07995, -1.6364), '3f42aab2d63eb363'],
    ['power(1.0001, 1000)', power(1.0001, 1000), '3ff1aec1e81e6de8'],
    ['sin(0.5)', sin(0.5), '3fdeaee8744b05f0'],
    ['sin(1)', sin(1), '3feaed548f090cee'],
    ['sin(-2.4)', sin(-2.4), 'bfe59d64f5c3d19b'],
    ['sin(6.1)', sin(6.1), 'bfc75119d733fb7c'],
    ['cos(0.5)', cos(0.5), '3fec1528065b7d50'],
    ['cos(1)', cos(1), '3fe14a280fb5068c'],
    ['cos(-2.4)', cos(-2.4), 'bfe798bab490d185'],
    ['cos(6.1)', cos(6.1), '3fef76ef5f4998b2'],
    ['tan(0.7)', tan(0.7), '3feaf406c2fc78ae'],
    ['tan(-1.5)', tan(-1.5), 'c02c33ed50b88778'],
    ['acos(0.3)', acos(0.3), '3ff441f5ecbeef58'],
    ['acos(-0.97)', acos(-0.97), '40072b10466e25f0'],
    ['atan(0.1)', atan(0.1), '3fb983e282e2cc4d'],
    ['atan(0.5)', atan(0.5), '3fddac670561bb50'],
    ['atan(0.9)', atan(0.9), '3fe77338a80603be'],
    ['atan(30)', atan(30), '3ff8997fbb8b19c0'],
    ['atan2(1, 2)', atan2(1, 2), '3fddac670561bb50'],
    ['atan2(-3, -0.5)', atan2(-3, -0.5), 'bffbc66e44cbc074'],
  ])('%s', (_, actual, expected) => {
    expect(hexOf(actual)).toBe(expected);
  });
});
