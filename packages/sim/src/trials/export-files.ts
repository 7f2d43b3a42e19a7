import { toArrow, toCSV } from 'arquero';
import type { ColumnTable } from 'arquero';
import { bool, dictionary, float64, int32, tableToIPC, utf8 } from '@uwdata/flechette';
import type { DataType } from '@uwdata/flechette';
import type { OutcomeRows } from './outcome-rows.ts';
import { provenanceStamp } from './provenance-stamp.ts';
import type { Provenance, StudySummary } from './study-summary.ts';
import type { StudyOutline } from './study.ts';
import { outcomesTable } from './tables.ts';

/** A file that is not written yet. */
export interface ExportFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * A study as files, ready to write (`node/write-whole.ts`) or to offer for download.
 *
 * - `outcomes.arrow`: the outcomes table as an Arrow IPC file; provenance in the schema's metadata under `rideout.…`.
 * - `outcomes.csv`: the same table. Provenance is its last column, `study`, the same in every row: any CSV reader can
 *   read the file as it is, and rows cut out of it still say where they come from. Numbers are in their shortest form
 *   that reads back to the same bits; an empty field is "did not happen".
 * - `study.json`: the summary, whose `provenance` is complete.
 */
export function exportFiles(outline: StudyOutline, rows: OutcomeRows, summary: StudySummary): ExportFile[] {
  const outcomes = outcomesTable(outline, rows);
  return [
    { name: 'outcomes.arrow', bytes: arrowBytes(outcomes, summary.provenance) },
    { name: 'outcomes.csv', bytes: utf8Bytes(csvText(outcomes, summary.provenance)) },
    { name: 'study.json', bytes: utf8Bytes(`${JSON.stringify(summary)}\n`) },
  ];
}

function csvText(outcomes: ColumnTable, provenance: Provenance): string {
  const stamp = provenanceStamp(provenance);
  const stamps = new Array<string>(outcomes.numRows()).fill(stamp);
  return toCSV(outcomes.assign({ study: stamps }));
}

function arrowBytes(outcomes: ColumnTable, provenance: Provenance): Uint8Array {
  const types = Object.fromEntries(outcomes.columnNames().map((name) => [name, arrowType(name)]));
  const arrow = toArrow(outcomes, { types });
  arrow.schema.metadata = new Map(
    Object.entries(provenance).map(([key, value]) => [`rideout.${key}`, String(value)]),
  );
  const bytes = tableToIPC(arrow, { format: 'file' });
  if (!bytes) throw new Error('the outcomes table could not be written as Arrow');
  return bytes;
}

const WORDS = ['alternative', 'alternativeTitle', 'strategy', 'strategyTitle', 'endCause', 'endUnit'];

/** Fixed types, so that a column does not change its type with its values. */
function arrowType(column: string): DataType {
  if (WORDS.includes(column)) return dictionary(utf8());
  if (column === 'censored') return bool();
  return column === 'draw' ? int32() : float64();
}

function utf8Bytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
