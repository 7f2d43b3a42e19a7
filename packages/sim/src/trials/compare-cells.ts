import { streamsOf } from '../chance/streams.ts';
import { compareRuntimes } from './compare-runtimes.ts';
import { runtimesOf, type OutcomeCells } from './outcome-cells.ts';
import { longerFractions } from './paired.ts';
import { NINE_IN_TEN } from './quantile.ts';
import type { PairedDifference } from './study-summary.ts';
import type { StudyOutline } from './study.ts';

/**
 * The paired differences of a study: within each alternative every strategy less the first one; then within each
 * strategy every alternative less the first one. A positive difference means: lasts longer than the first.
 */
export function compareCells(outline: StudyOutline, cells: OutcomeCells): PairedDifference[] {
  const sides = outline.alternatives.flatMap(({ id: alternativeId }, a) =>
    outline.strategies.map(({ id: strategyId }, s) => ({
      named: { alternativeId, strategyId },
      runtimes: runtimesOf(cells, a, s),
    })),
  );
  const runtimes = sides.map((side) => side.runtimes);
  const chance = streamsOf(outline.seed, 0)('trials/bootstrap');
  const compared = compareRuntimes(runtimes, NINE_IN_TEN, outline.horizonDays, chance);
  const difference = (first: number, second: number): PairedDifference => {
    const { days, meanDays } = compared.gain(second, first);
    return {
      first: sides[first]!.named,
      second: sides[second]!.named,
      meanDays,
      nineInTenDays: days,
      ...longerFractions(runtimes[first]!.times, runtimes[second]!.times),
    };
  };
  const strategies = outline.strategies.length;
  const at = (a: number, s: number) => a * strategies + s;
  const others = (list: readonly unknown[]) => [...list.keys()].slice(1);
  return [
    ...outline.alternatives.flatMap((_, a) =>
      others(outline.strategies).map((s) => difference(at(a, s), at(a, 0))),
    ),
    ...outline.strategies.flatMap((_, s) =>
      others(outline.alternatives).map((a) => difference(at(a, s), at(0, s))),
    ),
  ];
}
