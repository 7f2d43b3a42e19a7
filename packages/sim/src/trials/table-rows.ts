/** Rows to Arquero tables: plain arrays, one value per row, the same spelling of estimates everywhere. */
import { table } from 'arquero';
import type { ColumnTable } from 'arquero';
import type { Estimate } from './study-summary.ts';

export type Cell = string | number | boolean | null;
export type Row = Readonly<Record<string, Cell>>;

/** An estimate as three columns: `name`, `nameLow`, `nameHigh`. */
export function spread(name: string, { value, low, high }: Estimate): Row {
  return { [name]: value, [`${name}Low`]: low, [`${name}High`]: high };
}

/** Rows to columns; every row has the keys of the first. No rows: no columns. */
export function tableOf(rows: readonly Row[]): ColumnTable {
  const names = Object.keys(rows[0] ?? {});
  return table(Object.fromEntries(names.map((name) => [name, rows.map((row) => row[name] ?? null)])));
}
