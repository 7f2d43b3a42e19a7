/**
 * Variance-based indices from pick-freeze rows. MODEL.md §18.3.
 *
 * Sobol' 1993, Mathematical Modelling and Computational Experiments 1:407–414, and 2001, Math. Comput. Simulation
 * 55:271–280 (the indices); Jansen 1999, Comput. Phys. Commun. 117:35–43 (total); Saltelli et al. 2010, Comput. Phys.
 * Commun. 181:259–270, Table 2 (b) first order, (f) total.
 */
import type { Stream } from '../../chance/streams.ts';
import { percentileLimits } from '../../trials/bootstrap.ts';
import type { Estimate } from '../../trials/study-summary.ts';

/** One value per row of the base samples; all arrays have the same length ≥ 2. */
export interface PickFreeze {
  /** The function at sample A and at sample B, which are independent. */
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** Per group of inputs: at A with that group taken from B. */
  readonly mixed: readonly Float64Array[];
}

/** Shares of the variance, per group of inputs. */
export interface SobolIndices {
  readonly mean: number;
  /** Of A and B together. */
  readonly variance: number;
  /** Share of the variance that each group explains alone; NaN where nothing varies. */
  readonly first: readonly number[];
  /** The same with everything it does together with others. */
  readonly total: readonly number[];
}

/**
 * First-order and total shares of the variance, from the values of a pick-freeze design.
 *
 * @param times how often each row counts; left out: once
 */
export function sobolIndices({ a, b, mixed }: PickFreeze, times?: Int32Array): SobolIndices {
  const often = (row: number) => times?.[row] ?? 1;
  const rows = a.length;
  let sum = 0;
  for (let j = 0; j < rows; j++) sum += often(j) * (a[j]! + b[j]!);
  const mean = sum / (2 * rows);
  let squares = 0;
  for (let j = 0; j < rows; j++) squares += often(j) * (square(a[j]! - mean) + square(b[j]! - mean));
  const variance = squares / (2 * rows);
  const perGroup = mixed.map((ab) => {
    let together = 0;
    let apart = 0;
    for (let j = 0; j < rows; j++) {
      const step = ab[j]! - a[j]!;
      together += often(j) * (b[j]! - mean) * step;
      apart += often(j) * step * step;
    }
    return { first: together / rows / variance, total: apart / (2 * rows) / variance };
  });
  return { mean, variance, first: perGroup.map((g) => g.first), total: perGroup.map((g) => g.total) };
}

/** Shares of the variance with their intervals. */
export interface SobolEstimates {
  readonly mean: number;
  readonly variance: number;
  readonly first: readonly Estimate[];
  readonly total: readonly Estimate[];
}

const RESAMPLES = 999;

/**
 * The indices with 95 % intervals: percentile bootstrap over whole rows (Archer, Saltelli & Sobol' 1997, J. Stat.
 * Comput. Simulation 58:99–120). Estimates may fall a little outside 0…1: they are not cut.
 */
export function sobolEstimates(rows: PickFreeze, chance: Stream): SobolEstimates {
  const n = rows.a.length;
  const { mean, variance, first, total } = sobolIndices(rows);
  const resampled = Array.from({ length: RESAMPLES }, () => {
    const times = new Int32Array(n);
    for (let i = 0; i < n; i++) times[Math.floor(chance() * n)]! += 1;
    return sobolIndices(rows, times);
  });
  const estimate = (value: number, others: readonly number[]): Estimate => {
    if (Number.isNaN(value)) return { value: null, low: null, high: null };
    const sorted = others.filter((x) => !Number.isNaN(x)).sort((x, y) => x - y);
    const { low, high } = percentileLimits(sorted);
    return { value, low: low ?? null, high: high ?? null };
  };
  return {
    mean,
    variance,
    first: first.map((value, g) =>
      estimate(
        value,
        resampled.map((r) => r.first[g]!),
      ),
    ),
    total: total.map((value, g) =>
      estimate(
        value,
        resampled.map((r) => r.total[g]!),
      ),
    ),
  };
}

const square = (x: number): number => x * x;
