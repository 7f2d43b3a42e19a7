/** Rows of a study, read by column. */
import type { OutcomeRows } from '../../../../packages/sim/src/index.ts';

export const sum = (values: Iterable<number>): number =>
  [...values].reduce((total, value) => total + value, 0);
export const mean = (values: readonly number[]): number => sum(values) / values.length;

/** One column of the rows of one alternative, draw by draw. */
export function column(rows: OutcomeRows, name: string, alternative = 0): number[] {
  const alternatives = rows.columns['alternative']!;
  return Array.from(rows.columns[name]!).filter((_, i) => alternatives[i] === alternative);
}

/** Energy served over energy wanted, tier 1, all draws together. */
export function servedShare(rows: OutcomeRows, alternative = 0): number {
  const served = sum(column(rows, 'servedTier1Wh', alternative));
  return served / (served + sum(column(rows, 'unservedTier1Wh', alternative)));
}
