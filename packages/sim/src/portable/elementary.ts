/**
 * Elementary functions that give the same bits in every engine.
 *
 * The language leaves `Math.sin`, `Math.exp` and their like to the implementer, and engines differ in the last bit;
 * a threshold can turn that bit into a different day. These use only +, -, *, / and `Math.sqrt`, which IEEE 754
 * fixes. Each reduces its argument to a short interval and sums a series there; error at most 2 units in the last
 * place over the stated domain, 4 for `tan` and `acos` (`tests/units/portable`). Only this folder may use the engine's own.
 */

const LN2_HI = 0.69314718036912381649; // ln 2 split so that k * LN2_HI is exact for |k| < 2^20 (Cody & Waite 1980)
const LN2_LO = 1.90821492927058770002e-10;
const HALF_PI_1 = 1.57079632673412561417; // pi/2 in three parts, the first two with trailing zeros (Cody & Waite 1980)
const HALF_PI_2 = 6.0771005063039659766e-11;
const HALF_PI_3 = 2.02226624879595063154e-21;
const HALF_PI = Math.PI / 2;

const bits = new DataView(new ArrayBuffer(8));

/** 2 to the power k, -1023 ≤ k ≤ 1023, at position k + 1023. Halving and doubling are exact. */
const TWO_TO = new Float64Array(2047).fill(1);
for (let k = 1; k <= 1023; k++) {
  TWO_TO[1023 + k] = TWO_TO[1022 + k]! * 2;
  TWO_TO[1023 - k] = TWO_TO[1024 - k]! / 2;
}

/** e to the power x; 0 below -708, Infinity above 709. */
export function exp(x: number): number {
  if (x !== x) return x;
  if (x > 709) return Infinity;
  if (x < -708) return 0;
  const k = Math.round(x * Math.LOG2E);
  const hi = x - k * LN2_HI;
  const lo = k * LN2_LO;
  const r = hi - lo;
  // Taylor to r^13; |r| ≤ 0.347, remainder < 5e-18
  let s = 1 / 6227020800;
  s = s * r + 1 / 479001600;
  s = s * r + 1 / 39916800;
  s = s * r + 1 / 3628800;
  s = s * r + 1 / 362880;
  s = s * r + 1 / 40320;
  s = s * r + 1 / 5040;
  s = s * r + 1 / 720;
  s = s * r + 1 / 120;
  s = s * r + 1 / 24;
  s = s * r + 1 / 6;
  s = s * r + 0.5;
  return (1 + (hi + (s * r * r - lo))) * TWO_TO[1023 + k]!;
}

/** Natural logarithm; -Infinity at 0, NaN below. */
export function log(x: number): number {
  if (x !== x || x < 0) return NaN;
  if (x === 0) return -Infinity;
  if (x === Infinity) return x;
  let k = 0;
  let m = x;
  if (m < 2.2250738585072014e-308) {
    m *= 18014398509481984; // 2^54
    k = -54;
  }
  bits.setFloat64(0, m);
  const exponent = (bits.getUint32(0) >>> 20) - 1023;
  k += exponent;
  m *= TWO_TO[1023 - exponent]!; // 1 ≤ m < 2, exactly
  if (m > Math.SQRT2) {
    m /= 2;
    k += 1;
  }
  // ln m = 2 artanh(f/(2+f)), f = m - 1; |s| ≤ 0.1716, series to s^21
  const f = m - 1;
  const s = f / (2 + f);
  const z = s * s;
  let t = 1 / 23;
  t = t * z + 1 / 21;
  t = t * z + 1 / 19;
  t = t * z + 1 / 17;
  t = t * z + 1 / 15;
  t = t * z + 1 / 13;
  t = t * z + 1 / 11;
  t = t * z + 1 / 9;
  t = t * z + 1 / 7;
  t = t * z + 1 / 5;
  t = t * z + 1 / 3;
  const tail = 2 * s * z * t; // ln m = 2s + tail, and 2s = f - s*f
  return k * LN2_HI + (f - (s * f - (tail + k * LN2_LO)));
}

/** x to the power y for x ≥ 0, by exp(y ln x): relative error grows as |y ln x|. */
export function power(x: number, y: number): number {
  if (y === 0) return 1;
  if (x === 0) return y > 0 ? 0 : Infinity;
  return exp(y * log(x));
}

/** sin r for |r| ≤ pi/4: Taylor to r^17. */
function sinNear(r: number): number {
  const z = r * r;
  let s = 1 / 355687428096000;
  s = s * z - 1 / 1307674368000;
  s = s * z + 1 / 6227020800;
  s = s * z - 1 / 39916800;
  s = s * z + 1 / 362880;
  s = s * z - 1 / 5040;
  s = s * z + 1 / 120;
  s = s * z - 1 / 6;
  return r + r * z * s;
}

/** cos r for |r| ≤ pi/4: Taylor to r^16. */
function cosNear(r: number): number {
  const z = r * r;
  let s = 1 / 20922789888000;
  s = s * z - 1 / 87178291200;
  s = s * z + 1 / 479001600;
  s = s * z - 1 / 3628800;
  s = s * z + 1 / 40320;
  s = s * z - 1 / 720;
  s = s * z + 1 / 24;
  return 1 - z / 2 + z * z * s;
}

/** Sine of x radians, |x| < 1e6. */
export function sin(x: number): number {
  const k = Math.round(x / HALF_PI);
  const r = x - k * HALF_PI_1 - k * HALF_PI_2 - k * HALF_PI_3;
  const quadrant = k & 3;
  const s = (quadrant & 1) === 0 ? sinNear(r) : cosNear(r);
  return quadrant < 2 ? s : -s;
}

/** Cosine of x radians, |x| < 1e6. */
export function cos(x: number): number {
  const k = Math.round(x / HALF_PI);
  const r = x - k * HALF_PI_1 - k * HALF_PI_2 - k * HALF_PI_3;
  const quadrant = k & 3;
  const c = (quadrant & 1) === 0 ? cosNear(r) : sinNear(r);
  return quadrant === 0 || quadrant === 3 ? c : -c;
}

/** Tangent of x radians, |x| < 1e6. */
export function tan(x: number): number {
  return sin(x) / cos(x);
}

const C = 0.41421356237309515; // tan(pi/8)
const ATAN_C = 0.39269908169872425; // pi/8

/** Arc tangent, -pi/2 … pi/2. */
export function atan(x: number): number {
  if (x < 0) return -atan(-x);
  if (x !== x) return x;
  if (x > 1) return HALF_PI - atan(1 / x);
  // atan x = atan c + atan((x - c)/(1 + c x)); c = 1 or tan(pi/8) leaves |t| ≤ tan(pi/16)
  if (x > 0.668178637919299) return Math.PI / 4 + atanNear((x - 1) / (1 + x));
  if (x > 0.198912367379658) return ATAN_C + atanNear((x - C) / (1 + C * x));
  return atanNear(x);
}
/** atan t for |t| ≤ 0.2: series to t^23. */
function atanNear(t: number): number {
  const z = t * t;
  let s = -1 / 23;
  s = s * z + 1 / 21;
  s = s * z - 1 / 19;
  s = s * z + 1 / 17;
  s = s * z - 1 / 15;
  s = s * z + 1 / 13;
  s = s * z - 1 / 11;
  s = s * z + 1 / 9;
  s = s * z - 1 / 7;
  s = s * z + 1 / 5;
  s = s * z - 1 / 3;
  return t + t * z * s;
}

/** Angle of the point (x, y), -pi … pi. */
export function atan2(y: number, x: number): number {
  if (x > 0) return atan(y / x);
  if (x < 0) return y >= 0 ? atan(y / x) + Math.PI : atan(y / x) - Math.PI;
  return y > 0 ? HALF_PI : y < 0 ? -HALF_PI : 0;
}

/** Arc cosine; arguments outside [-1, 1] are taken as the nearer end. */
export function acos(x: number): number {
  if (x >= 1) return 0;
  if (x <= -1) return Math.PI;
  return x < 0 ? Math.PI - acos(-x) : 2 * atan(Math.sqrt((1 - x) / (1 + x)));
}
