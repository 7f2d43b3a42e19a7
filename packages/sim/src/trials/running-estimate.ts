/** How an estimate comes to rest as outages are added. */
import type { OutcomeRows } from './outcome-rows.ts';
import { nineInTenAndMedian } from './quantile.ts';
import type { Estimate } from './study-summary.ts';
import { kaplanMeier } from './survival.ts';

/** The figures of draws 0 to `draws` - 1 and of nothing else. */
export interface RunningEstimate {
  readonly draws: number;
  readonly nineInTenDays: Estimate;
  readonly medianDays: Estimate;
}

/** By positions in the study's outline. */
export interface CellChoice {
  readonly alternative: number;
  readonly strategy: number;
}

const FIRST = 10;

/**
 * Each figure is the very one that a study of so many draws states.
 *
 * @param rows draws 0, 1, 2, … in any order, each once per alternative and strategy
 * @param at numbers of draws, ascending; those beyond the rows are left out; left out: about `FIRST` × 1.1ⁿ and all
 */
export function runningEstimate(
  rows: OutcomeRows,
  { alternative, strategy }: CellChoice,
  at?: readonly number[],
): RunningEstimate[] {
  const column = (name: string) => rows.columns[name]!;
  const [ofAlternative, ofStrategy, draw] = [column('alternative'), column('strategy'), column('draw')];
  const own = Array.from({ length: rows.length }, (_, row) => row)
    .filter((row) => ofAlternative[row] === alternative && ofStrategy[row] === strategy)
    .sort((a, b) => draw[a]! - draw[b]!);
  const inOrder = (name: string) => Float64Array.from(own, (row) => column(name)[row]!);
  const [runtime, censored] = [inOrder('runtimeMinutes'), inOrder('censored')];
  const asked = at ?? looks(own.length);
  return asked
    .filter((draws) => draws >= 1 && draws <= own.length)
    .map((draws) => {
      const table = kaplanMeier(runtime.subarray(0, draws), censored.subarray(0, draws));
      return { draws, ...nineInTenAndMedian(table) };
    });
}

/** Closer together at the start, where the figures move most. */
function looks(all: number): number[] {
  const numbers: number[] = [];
  for (let n = Math.min(FIRST, all); n < all; n = Math.ceil(n * 1.1)) numbers.push(n);
  return all > 0 ? [...numbers, all] : [];
}
