import { streamsOf } from '../chance/streams.ts';
import { resampleCount, resampledDifference, resampledTimesReached } from './bootstrap.ts';
import { MINUTES_PER_DAY } from './minutes-per-day.ts';
import { runtimesOf, type OutcomeCells } from './outcome-cells.ts';
import { pairedRuntimes } from './paired.ts';
import { NINE_IN_TEN, timeReachedBy } from './quantile.ts';
import type { Estimate, PairedDifference } from './study-summary.ts';
import type { StudyOutline } from './study.ts';
import { kaplanMeier } from './survival.ts';

/** One alternative and strategy, with what comparing it takes. Times in minutes. */
interface Side {
  readonly alternativeId: string;
  readonly strategyId: string;
  readonly times: Float64Array;
  readonly censored: Float64Array;
  readonly nineInTen: { readonly point: number | null; readonly resampled: Float64Array };
}

/**
 * The paired differences of a study: within each alternative every strategy less the first one; then within each
 * strategy every alternative less the first one. A positive difference means: lasts longer than the first.
 */
export function compareCells(outline: StudyOutline, cells: OutcomeCells): PairedDifference[] {
  const sides = sidesOf(outline, cells);
  const horizonMinutes = outline.horizonDays * MINUTES_PER_DAY;
  const strategies = outline.strategies.length;
  const side = (a: number, s: number) => sides[a * strategies + s]!;
  const compared: PairedDifference[] = [];
  outline.alternatives.forEach((_, a) => {
    for (let s = 1; s < strategies; s += 1) compared.push(difference(side(a, s), side(a, 0), horizonMinutes));
  });
  outline.strategies.forEach((_, s) => {
    for (let a = 1; a < outline.alternatives.length; a += 1)
      compared.push(difference(side(a, s), side(0, s), horizonMinutes));
  });
  return compared;
}

function sidesOf(outline: StudyOutline, cells: OutcomeCells): Side[] {
  const runtimes = outline.alternatives.flatMap((alternative, a) =>
    outline.strategies.map((strategy, s) => ({
      alternativeId: alternative.id,
      strategyId: strategy.id,
      ...runtimesOf(cells, a, s),
    })),
  );
  const chance = streamsOf(outline.seed, 0)('trials/bootstrap');
  const resampled = resampledTimesReached(runtimes, NINE_IN_TEN, resampleCount(cells.draws.length), chance);
  return runtimes.map((runtime, i) => {
    const table = kaplanMeier(runtime.times, runtime.censored);
    return {
      ...runtime,
      nineInTen: { point: timeReachedBy(NINE_IN_TEN, table.time, table.survival), resampled: resampled[i]! },
    };
  });
}

function difference(first: Side, second: Side, horizonMinutes: number): PairedDifference {
  const paired = pairedRuntimes(first.times, second.times);
  return {
    first: { alternativeId: first.alternativeId, strategyId: first.strategyId },
    second: { alternativeId: second.alternativeId, strategyId: second.strategyId },
    meanDays: inDays(paired.meanDifference),
    nineInTenDays: inDays(resampledDifference(first.nineInTen, second.nineInTen, horizonMinutes)),
    firstLongerFraction: paired.firstLongerFraction,
    secondLongerFraction: paired.secondLongerFraction,
  };
}

function inDays(minutes: Estimate): Estimate {
  const days = (value: number | null) => (value === null ? null : value / MINUTES_PER_DAY);
  return { value: days(minutes.value), low: days(minutes.low), high: days(minutes.high) };
}
