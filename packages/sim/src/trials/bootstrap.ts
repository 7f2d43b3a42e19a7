import type { Stream } from '../chance/streams.ts';
import { SHARE_SLACK } from './quantile.ts';
import type { Estimate } from './study-summary.ts';

/** Runtimes of one cell, aligned with the other cells' by draw. Whatever is censored is so at the horizon. */
export interface Runtimes {
  readonly times: Float64Array;
  readonly censored: Float64Array;
}

/**
 * How many resamples of `draws` draws. One less than a multiple of 200, so that the 2.5 % and 97.5 % points are single
 * order statistics (Davison & Hinkley 1997, Bootstrap Methods and their Application, §5.2.1). Fewer for many draws,
 * to keep the whole below a tenth of a second or so.
 */
export function resampleCount(draws: number): number {
  return draws <= 2000 ? 999 : 399;
}

/**
 * Time that `share` of runs reach, in resamples of the draws with replacement. Every cell meets the same resamples, so
 * that differences between cells stay paired. Efron & Tibshirani 1993, An Introduction to the Bootstrap, ch. 8.
 *
 * @param cells all of the same length ≥ 1.
 * @returns per cell one value per resample, in the unit of `times`; Infinity where the horizon hides it.
 */
export function resampledTimesReached(
  cells: readonly Runtimes[],
  share: number,
  resamples: number,
  chance: Stream,
): Float64Array[] {
  const draws = cells[0]?.times.length ?? 0;
  const shortestFirst = cells.map(endedShortestFirst);
  const results = cells.map(() => new Float64Array(resamples));
  const weight = new Int32Array(draws);
  for (let b = 0; b < resamples; b += 1) {
    weight.fill(0);
    for (let i = 0; i < draws; i += 1) weight[Math.floor(chance() * draws)]! += 1;
    for (let c = 0; c < cells.length; c += 1) {
      results[c]![b] = weightedTimeReached(cells[c]!.times, shortestFirst[c]!, weight, draws, share);
    }
  }
  return results;
}

/**
 * Difference first − second of two estimates that the horizon may hide, with the percentile interval of paired
 * resamples. A hidden time is at least the horizon: it bounds the difference on one side and leaves the other open.
 *
 * @param first `point` null = hidden; `resampled` as from `resampledTimesReached`, Infinity = hidden.
 * @param horizon in the same unit.
 */
export function resampledDifference(
  first: { readonly point: number | null; readonly resampled: Float64Array },
  second: { readonly point: number | null; readonly resampled: Float64Array },
  horizon: number,
): Estimate {
  const least = first.resampled.map((f, b) => leastDifference(f, second.resampled[b]!, horizon)).sort();
  const most = first.resampled.map((f, b) => -leastDifference(second.resampled[b]!, f, horizon)).sort();
  return {
    value: first.point === null || second.point === null ? null : first.point - second.point,
    low: finiteOrNull(percentileLimits(least).low!),
    high: finiteOrNull(percentileLimits(most).high!),
  };
}

/** The 2.5 % and 97.5 % points of resampled values, as order statistics; undefined for fewer than 20 of them. */
export function percentileLimits(sorted: ArrayLike<number>): {
  readonly low: number | undefined;
  readonly high: number | undefined;
} {
  const tail = Math.round((sorted.length + 1) * 0.025);
  return { low: sorted[tail - 1], high: sorted[sorted.length - tail] };
}

function leastDifference(first: number, second: number, horizon: number): number {
  if (second === Infinity) return -Infinity;
  return Math.min(first, horizon) - second;
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function weightedTimeReached(
  times: Float64Array,
  shortestFirst: Int32Array,
  weight: Int32Array,
  draws: number,
  share: number,
): number {
  const tolerated = (1 - share + SHARE_SLACK) * draws;
  let ended = 0;
  for (let i = 0; i < shortestFirst.length; i += 1) {
    ended += weight[shortestFirst[i]!]!;
    if (ended > tolerated) return times[shortestFirst[i]!]!;
  }
  return Infinity;
}

function endedShortestFirst({ times, censored }: Runtimes): Int32Array {
  const ended: number[] = [];
  for (let i = 0; i < times.length; i += 1) if (censored[i] !== 1) ended.push(i);
  return Int32Array.from(ended).sort((a, b) => times[a]! - times[b]!);
}
