/** Tables as files: Arrow IPC and CSV, each carrying what it takes to repeat it. */
import { toArrow, toCSV, toJSON } from 'arquero';
import type { ColumnTable } from 'arquero';
import { bool, dictionary, float64, tableToIPC, utf8 } from '@uwdata/flechette';
import type { DataType } from '@uwdata/flechette';
import { provenanceStamp } from './provenance-stamp.ts';
import type { Provenance } from './study-summary.ts';
import type { TraceProvenance } from './trace-provenance.ts';

/** A file that is not written yet. */
export interface ExportFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** `name.arrow` and `name.csv`; words, yes-and-no and numbers told apart by what the columns hold. */
export function tableFiles(name: string, table: ColumnTable, provenance: Provenance): ExportFile[] {
  return [arrowFile(name, table, provenance), csvFile(name, table, provenance)];
}

/** A table as `name.arrow`. */
export function arrowFile(
  name: string,
  table: ColumnTable,
  provenance: Provenance | TraceProvenance,
): ExportFile {
  const bytes = arrowBytes(table, provenance, (column) => typeBySight(table, column));
  return { name: `${name}.arrow`, bytes };
}

/** A table as `name.csv`. */
function csvFile(name: string, table: ColumnTable, provenance: Provenance | TraceProvenance): ExportFile {
  return { name: `${name}.csv`, bytes: utf8Bytes(csvText(table, provenance)) };
}

/** A result as `name.json`. */
export function jsonFile(name: string, result: unknown): ExportFile {
  return { name: `${name}.json`, bytes: utf8Bytes(`${JSON.stringify(result)}\n`) };
}

/** The table with the stamp as its last column, `study`, as CSV. */
export function csvText(table: ColumnTable, provenance: Provenance | TraceProvenance): string {
  return toCSV(stamped(table, provenance));
}

/** The same as JSON, a list of rows. */
export function jsonText(table: ColumnTable, provenance: Provenance | TraceProvenance): string {
  return toJSON(stamped(table, provenance));
}

function stamped(table: ColumnTable, provenance: Provenance | TraceProvenance): ColumnTable {
  const stamps = new Array<string>(table.numRows()).fill(provenanceStamp(provenance));
  return table.assign({ study: stamps });
}

/** Provenance is in the schema's metadata under `rideout.…`. */
export function arrowBytes(
  table: ColumnTable,
  provenance: Provenance | TraceProvenance,
  typeOf: (column: string) => DataType,
): Uint8Array {
  const types = Object.fromEntries(table.columnNames().map((name) => [name, typeOf(name)]));
  const arrow = toArrow(table, { types });
  arrow.schema.metadata = new Map(
    Object.entries(provenance).map(([key, value]) => [`rideout.${key}`, String(value)]),
  );
  const bytes = tableToIPC(arrow, { format: 'file' });
  if (!bytes) throw new Error('the table could not be written as Arrow');
  return bytes;
}

function typeBySight(table: ColumnTable, column: string): DataType {
  const values = Array.from({ length: table.numRows() }, (_, row): unknown => table.get(column, row));
  if (values.some((value) => typeof value === 'string')) return dictionary(utf8());
  return values.some((value) => typeof value === 'boolean') ? bool() : float64();
}

export function utf8Bytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
