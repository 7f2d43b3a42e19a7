import type { Runtimes } from './bootstrap.ts';
import type { OutcomeRows } from './outcome-rows.ts';
import type { StudyOutline } from './study.ts';

/** Outcome rows sorted into one cell per (alternative, strategy), every cell in the same order of draws. */
export interface OutcomeCells {
  /** Draw indices, ascending. */
  readonly draws: Float64Array;
  /** One column of one cell, aligned with `draws`; a fresh array. */
  column(alternative: number, strategy: number, name: string): Float64Array;
  /** Row numbers of the whole table by draw, then alternative, then strategy. */
  readonly order: Int32Array;
}

/**
 * Sorts rows into cells. They may come in any order and hold any set of draws, but each draw must be there once for
 * every alternative and strategy: that is what makes comparisons paired.
 *
 * @throws RangeError when there are no rows, a column is missing, or a draw lacks a row or has two.
 */
export function outcomeCells(outline: StudyOutline, rows: OutcomeRows): OutcomeCells {
  if (rows.length === 0) throw new RangeError('there are no outcome rows yet: run at least one draw');
  const strategies = outline.strategies.length;
  const width = outline.alternatives.length * strategies;
  const draws = distinctAscending(columnOf(rows, 'draw'));
  const order = rowOrder(outline, rows, draws, width);
  return {
    draws,
    order,
    column(alternative, strategy, name) {
      const from = columnOf(rows, name);
      const cell = alternative * strategies + strategy;
      const out = new Float64Array(draws.length);
      for (let i = 0; i < out.length; i += 1) out[i] = from[order[i * width + cell]!]!;
      return out;
    },
  };
}

/** How long one cell's runs last, minutes. */
export function runtimesOf(cells: OutcomeCells, alternative: number, strategy: number): Runtimes {
  return {
    times: cells.column(alternative, strategy, 'runtimeMinutes'),
    censored: cells.column(alternative, strategy, 'censored'),
  };
}

function rowOrder(outline: StudyOutline, rows: OutcomeRows, draws: Float64Array, width: number): Int32Array {
  const rank = new Map<number, number>();
  draws.forEach((draw, i) => rank.set(draw, i));
  const draw = columnOf(rows, 'draw');
  const alternative = columnOf(rows, 'alternative');
  const strategy = columnOf(rows, 'strategy');
  const order = new Int32Array(draws.length * width).fill(-1);
  for (let row = 0; row < rows.length; row += 1) {
    const a = alternative[row]!;
    const s = strategy[row]!;
    if (!outline.alternatives[a] || !outline.strategies[s]) {
      throw new RangeError(
        `outcome row ${row} names alternative ${a}, strategy ${s}, which this study does not have`,
      );
    }
    const at = rank.get(draw[row]!)! * width + a * outline.strategies.length + s;
    if (order[at] !== -1)
      throw new RangeError(
        `${cellName(outline, draw[row]!, a, s)} is there twice: a shard was merged more than once`,
      );
    order[at] = row;
  }
  const hole = order.indexOf(-1);
  if (hole >= 0) {
    const cell = hole % width;
    const [a, s] = [Math.floor(cell / outline.strategies.length), cell % outline.strategies.length];
    throw new RangeError(
      `${cellName(outline, draws[Math.floor(hole / width)]!, a, s)} is missing: a shard is not complete`,
    );
  }
  return order;
}

function cellName(outline: StudyOutline, draw: number, alternative: number, strategy: number): string {
  return `draw ${draw} of alternative "${outline.alternatives[alternative]!.id}", strategy "${outline.strategies[strategy]!.id}"`;
}

/** A column by name, or a RangeError that names it. */
export function columnOf(rows: OutcomeRows, name: string): Float64Array {
  const column = rows.columns[name];
  if (!column) throw new RangeError(`outcome rows lack the column "${name}"`);
  return column;
}

function distinctAscending(values: Float64Array): Float64Array {
  return values
    .slice()
    .sort()
    .filter((value, i, all) => i === 0 || value !== all[i - 1]);
}
