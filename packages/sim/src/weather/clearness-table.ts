/** Daily clearness as a function of a standard normal number, month by month. */
import { clearestDay, lawQuantile, publishedClearnessLaw } from './clearness-law.ts';
import { curveAt, meanKeepingNodes } from './month-curve.ts';
import { normalDensity } from '../chance/normal-deviate.ts';

const REACH = 4.5; // standard deviations either side
const STEPS_PER_UNIT = 20;
const COLUMNS = 2 * REACH * STEPS_PER_UNIT + 1;
/** No day is darker. Measured: the darkest day of a year has a median clearness near 0.05 at Penn State (SURFRAD). */
const DARKEST_DAY = 0.04;

export interface ClearnessTable {
  /** Row m, column c: daily clearness at mid-month m (0…11) for the normal number c / 20 − 4.5. */
  readonly clearness: Float64Array;
  /** Month means of the curve; twelve mid-month values. */
  readonly means: readonly number[];
  /**
   * How much of the normal number's correlation the clearness keeps, twelve: correlation of the two, squared. Day-to-day
   * correlation of clearness is that of the normal number times this, to first order.
   */
  readonly kept: readonly number[];
  /** Spread of each month's daily clearness as it comes out, twelve. */
  readonly spreads: readonly number[];
  /** Correlation of clearness and normal number, pooled over the year. */
  readonly tie: number;
}

const grid = (): number[] => Array.from({ length: COLUMNS }, (_, c) => c / STEPS_PER_UNIT - REACH);

/**
 * With a spread given, the published shape is stretched about its mean until its spread is the given one, and kept
 * within the darkest day and the published clearest day. Without, it is the published law itself.
 *
 * @param means twelve monthly means of daily clearness.
 * @param spreads twelve standard deviations, or undefined.
 */
export function createClearnessTable(
  means: readonly number[],
  spreads: readonly number[] | undefined,
): ClearnessTable {
  const shares = gridShares();
  const weights = gridWeights();
  const nodes = meanKeepingNodes(means).map((mean) => Math.min(0.85, Math.max(0.02, mean)));
  const clearness = new Float64Array(12 * COLUMNS);
  const kept: number[] = [];
  const made: number[] = [];
  nodes.forEach((mean, month) => {
    const law = publishedClearnessLaw(mean);
    let row = shares.map((u) => lawQuantile(law, u));
    if (spreads !== undefined) row = stretched(row, weights, mean, spreads[month]!);
    clearness.set(row, month * COLUMNS);
    kept.push(squaredTie(row, weights));
    made.push(spreadOf(row, weights, meanOf(row, weights)));
  });
  const tie = Math.sqrt(kept.reduce((sum, k) => sum + k, 0) / 12);
  return { clearness, means: nodes, kept, spreads: made, tie };
}

/** Daily clearness. @param position from `monthPosition`. @param normal the standard normal number. */
export function dailyClearness(table: ClearnessTable, position: number, normal: number): number {
  const reach = Math.min(Math.max((normal + REACH) * STEPS_PER_UNIT, 0), COLUMNS - 1.001);
  const column = Math.floor(reach);
  const share = reach - column;
  const before = Math.floor(position);
  const at = (month: number): number => {
    const index = month * COLUMNS + column;
    return table.clearness[index]! * (1 - share) + table.clearness[index + 1]! * share;
  };
  const monthShare = position - before;
  return at(before) * (1 - monthShare) + at(before === 11 ? 0 : before + 1) * monthShare;
}

/** The mean daily clearness of the time of year. */
export const meanClearness = (table: ClearnessTable, position: number): number =>
  curveAt(table.means, position);

/** Cumulative normal shares at the grid, by Simpson's rule on its own density. */
function gridShares(): number[] {
  const h = 1 / STEPS_PER_UNIT;
  let share = 3.39767312473e-6; // below -4.5; NIST/SEMATECH e-Handbook §1.3.6.7.1, further digits by series
  return grid().map((z, c) => {
    if (c > 0) share += (h / 6) * (normalDensity(z - h) + 4 * normalDensity(z - h / 2) + normalDensity(z));
    return Math.min(share, 1);
  });
}

function gridWeights(): number[] {
  const densities = grid().map(normalDensity);
  const sum = densities.reduce((total, d) => total + d, 0);
  return densities.map((d) => d / sum);
}

function meanOf(row: readonly number[], weights: readonly number[]): number {
  return row.reduce((sum, value, c) => sum + value * weights[c]!, 0);
}

function spreadOf(row: readonly number[], weights: readonly number[], mean: number): number {
  return Math.sqrt(row.reduce((sum, value, c) => sum + (value - mean) * (value - mean) * weights[c]!, 0));
}

function stretched(
  row: readonly number[],
  weights: readonly number[],
  mean: number,
  spread: number,
): number[] {
  const ceiling = Math.max(clearestDay(mean), mean + 0.01);
  let factor = 1;
  let centre = mean;
  let result = [...row];
  for (let round = 0; round < 60; round++) {
    result = row.map((value) => Math.min(ceiling, Math.max(DARKEST_DAY, centre + (value - mean) * factor)));
    const reached = meanOf(result, weights);
    factor = Math.min(4, (factor * spread) / spreadOf(result, weights, reached));
    centre += mean - reached;
  }
  return result;
}

function squaredTie(row: readonly number[], weights: readonly number[]): number {
  const mean = meanOf(row, weights);
  const spread = spreadOf(row, weights, mean);
  const covariance = grid().reduce((sum, z, c) => sum + z * (row[c]! - mean) * weights[c]!, 0);
  return (covariance * covariance) / (spread * spread);
}
