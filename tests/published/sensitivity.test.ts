/** Variance-based indices against functions whose indices are known in closed form. */
import { describe, expect, it } from 'vitest';
import { sobolEstimates, sobolIndices, type PickFreeze } from '../../packages/sim/src/index.ts';
import { streamsOf } from '../../packages/sim/src/chance/streams.ts';
import { within } from './within.ts';

const ROWS = 2 ** 15;

/** Rows of A, B and A with one input from B, inputs even on 0…1, by our own generator. */
function pickFreeze(
  f: (u: readonly number[]) => number,
  inputs: number,
  rows: number,
  seed: string,
): PickFreeze {
  const chance = streamsOf(seed, 0)('sensitivity');
  const sample = () => Array.from({ length: rows }, () => Array.from({ length: inputs }, chance));
  const [a, b] = [sample(), sample()];
  const mixed = Array.from({ length: inputs }, (_, i) =>
    Float64Array.from(a, (row, j) => f(row.map((u, k) => (k === i ? b[j]![i]! : u)))),
  );
  return { a: Float64Array.from(a, f), b: Float64Array.from(b, f), mixed };
}

describe('the Ishigami function, a = 7, b = 0.1, inputs even on −π…π', () => {
  // Ishigami & Homma 1990, Proc. ISUMA'90, 398–403; its indices in closed form, as tabulated in Saltelli, Chan & Scott
  // (eds.) 2000, Sensitivity Analysis, from memory; worked out here again from the formulas.
  const f = (u: readonly number[]) => {
    const [x1, x2, x3] = u.map((v) => (2 * v - 1) * Math.PI) as [number, number, number];
    return Math.sin(x1) + 7 * Math.sin(x2) ** 2 + 0.1 * x3 ** 4 * Math.sin(x1);
  };
  const { mean, variance, first, total } = sobolIndices(pickFreeze(f, 3, ROWS, 'ishigami'));

  it('has mean a/2 and variance 1/2 + a²/8 + bπ⁴/5 + b²π⁸/18: within 1 %', () => {
    within(mean, 3.5, 0.035, 'mean');
    within(variance, 0.5 + 49 / 8 + (0.1 * Math.PI ** 4) / 5 + (0.01 * Math.PI ** 8) / 18, 0.14, 'variance');
  });

  it('has the known first-order and total indices: within 0.02 for 32,768 rows', () => {
    [0.3139, 0.4424, 0].forEach((s, i) => within(first[i], s, 0.02, `S${i + 1}`));
    [0.5576, 0.4424, 0.2437].forEach((s, i) => within(total[i], s, 0.02, `ST${i + 1}`));
  });
});

describe('the G-function of Sobol’, a = 0, 1, 4.5, 9, 99, 99, 99, 99', () => {
  // Saltelli & Sobol' 1995, Reliab. Eng. Syst. Saf. 50:225–239; indices by its closed form: Vᵢ = 1/(3(1 + aᵢ)²).
  const a = [0, 1, 4.5, 9, 99, 99, 99, 99];
  const f = (u: readonly number[]) =>
    u.reduce((product, v, i) => (product * (Math.abs(4 * v - 2) + a[i]!)) / (1 + a[i]!), 1);
  const own = a.map((x) => 1 / (3 * (1 + x) ** 2));
  const all = own.reduce((product, v) => product * (1 + v), 1);
  const { first, total } = sobolIndices(pickFreeze(f, a.length, ROWS, 'g'));

  it('has the known indices, from 0.716 down to 0.0001: within 0.02', () => {
    let compared = 0;
    own.forEach((v, i) => {
      within(first[i], v / (all - 1), 0.02, `S${i + 1}`);
      within(total[i], (v * all) / (1 + v) / (all - 1), 0.02, `ST${i + 1}`);
      compared += 2;
    });
    expect(compared).toBe(16);
    within(own[0]! / (all - 1), 0.716, 0.0005, 'the formula’s own first figure'); // as printed there, from memory
  });
});

describe('intervals of the indices', () => {
  it('hold the known total index of a sum in 90 to 99 of 100 samples of 200 rows', () => {
    const f = (u: readonly number[]) => u[0]! + 2 * u[1]!;
    let held = 0;
    for (let s = 0; s < 100; s++) {
      const { total } = sobolEstimates(pickFreeze(f, 2, 200, `cover ${s}`), streamsOf('resample', s)('x'));
      if (total[0]!.low! <= 0.2 && 0.2 <= total[0]!.high!) held++;
    }
    expect(held).toBeGreaterThanOrEqual(90);
    expect(held).toBeLessThanOrEqual(99);
  });

  it('are null where nothing varies', () => {
    const still = new Float64Array(50).fill(3);
    const { first, total, variance } = sobolEstimates(
      { a: still, b: still, mixed: [still] },
      streamsOf('still', 0)('x'),
    );
    expect(variance).toBe(0);
    expect([first[0], total[0]]).toEqual(Array(2).fill({ value: null, low: null, high: null }));
  });
});
