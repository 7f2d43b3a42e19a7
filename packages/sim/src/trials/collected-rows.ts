/** Outcome rows of a growing study, kept once: each shard's are copied to their place as they come. */
import type { OutcomeRows } from './outcome-rows.ts';

/** Rows of draws 0, 1, 2, … in draw order, whatever order their shards come in. */
export class CollectedRows {
  readonly #rowsPerDraw: number;
  readonly #columns: Map<string, Float64Array>;
  #room = 0;

  /** @param names every column of the rows. @param rowsPerDraw rows that each draw has. */
  constructor(names: readonly string[], rowsPerDraw: number) {
    this.#rowsPerDraw = rowsPerDraw;
    this.#columns = new Map(names.map((name) => [name, new Float64Array(0)]));
  }

  /** Makes room for `draws` draws, so that adding them copies nothing twice. */
  reserve(draws: number): void {
    const room = draws * this.#rowsPerDraw;
    if (room <= this.#room) return;
    this.#room = room;
    for (const [name, column] of this.#columns) {
      const wider = new Float64Array(room);
      wider.set(column);
      this.#columns.set(name, wider);
    }
  }

  /** Rows of consecutive draws from draw `from`, for which there is room. */
  add(from: number, rows: OutcomeRows): void {
    for (const [name, column] of this.#columns) column.set(rows.columns[name]!, from * this.#rowsPerDraw);
  }

  /** The rows of the first `draws` draws, all of which have been added: a view of what is kept, not a copy, where it can be. */
  first(draws: number): OutcomeRows {
    const length = draws * this.#rowsPerDraw;
    const columns = [...this.#columns].map(
      ([name, column]) => [name, column.length === length ? column : column.slice(0, length)] as const,
    );
    return { length, columns: Object.fromEntries(columns) };
  }
}
