/** When a study has run enough draws. MODEL.md, Statistics, S9. */
import { MINUTES_PER_DAY } from './minutes-per-day.ts';
import { outcomeCells, runtimesOf } from './outcome-cells.ts';
import type { OutcomeRows } from './outcome-rows.ts';
import { daysReachedBy, NINE_IN_TEN } from './quantile.ts';
import type { Estimate } from './study-summary.ts';
import type { StudyOutline } from './study.ts';
import { kaplanMeier } from './survival.ts';

/** How firmly a study stands so far. */
export interface Tightness {
  readonly tightEnough: boolean;
  readonly draws: number;
  /** The alternative and strategy whose days that nine in ten reach are least certain. */
  readonly widest: {
    readonly alternativeId: string;
    readonly strategyId: string;
    readonly halfWidthDays: number;
  };
}

const FIRST_LOOK = 200;

/**
 * The draw counts at which a study may look at its own figures: 200, 400, 800, … Fixed beforehand on purpose. Stopping
 * the moment an interval looks narrow keeps the lucky narrow ones, and its 95 % is then no longer 95 %; few looks at
 * set sizes keep that loss small (`tests/published/interval-coverage.test.ts` measures it).
 *
 * @param draws how many are done.
 * @returns the next count to run to, > draws.
 */
export function nextLook(draws: number): number {
  let look = FIRST_LOOK;
  while (look <= draws) look *= 2;
  return look;
}

/**
 * Whether the days that nine in ten reach are known to ± `wantedHalfWidthDays` for every alternative and strategy.
 * Call it only at the draw counts of `nextLook`.
 *
 * @param wantedHalfWidthDays > 0.
 * @throws RangeError as `outcomeCells`.
 */
export function tightness(outline: StudyOutline, rows: OutcomeRows, wantedHalfWidthDays: number): Tightness {
  const cells = outcomeCells(outline, rows);
  const widths = outline.alternatives.flatMap((alternative, a) =>
    outline.strategies.map((strategy, s) => {
      const { times, censored } = runtimesOf(cells, a, s);
      const table = kaplanMeier(times, censored);
      const halfWidthDays = halfWidth(
        daysReachedBy(NINE_IN_TEN, table, MINUTES_PER_DAY),
        outline.horizonDays,
      );
      return { alternativeId: alternative.id, strategyId: strategy.id, halfWidthDays };
    }),
  );
  const widest = widths.reduce((a, b) => (b.halfWidthDays > a.halfWidthDays ? b : a));
  return { tightEnough: widest.halfWidthDays <= wantedHalfWidthDays, draws: cells.draws.length, widest };
}

/** Half the interval as far as the horizon shows it: more draws tell nothing about what lies past it. */
function halfWidth(days: Estimate, horizonDays: number): number {
  return ((days.high ?? horizonDays) - (days.low ?? horizonDays)) / 2;
}
