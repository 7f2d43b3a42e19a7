/** Rows that arrive shard by shard in any order, read as one run from draw 0 without a gap. */
import type { OutcomeRows } from './outcome-rows.ts';
import { joinRows } from './shard.ts';

/** Shards of a study, or of a job, put in draw order as they come. */
export class RowsInOrder {
  readonly #inOrder: OutcomeRows[] = [];
  readonly #waiting = new Map<number, { readonly to: number; readonly rows: OutcomeRows }>();
  #draws = 0;

  /** Rows of draws `from` … `to - 1`. */
  add(from: number, to: number, rows: OutcomeRows): void {
    this.#waiting.set(from, { to, rows });
    for (let next = this.#waiting.get(this.#draws); next; next = this.#waiting.get(this.#draws)) {
      this.#waiting.delete(this.#draws);
      this.#inOrder.push(next.rows);
      this.#draws = next.to;
    }
  }

  /** Draws 0 … this - 1 are all there. */
  get draws(): number {
    return this.#draws;
  }

  /** All rows up to `draws`. */
  joined(): OutcomeRows {
    return joinRows(this.#inOrder);
  }
}
