import { bool, dictionary, float64, int32, utf8 } from '@uwdata/flechette';
import type { DataType } from '@uwdata/flechette';
import type { OutcomeRows } from './outcome-rows.ts';
import type { StudySummary } from './study-summary.ts';
import type { StudyOutline } from './study.ts';
import { arrowBytes, csvText, jsonFile, utf8Bytes, type ExportFile } from './table-files.ts';
import { outcomesTable } from './tables.ts';

export type { ExportFile } from './table-files.ts';

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
    { name: 'outcomes.arrow', bytes: arrowBytes(outcomes, summary.provenance, arrowType) },
    { name: 'outcomes.csv', bytes: utf8Bytes(csvText(outcomes, summary.provenance)) },
    jsonFile('study', summary),
  ];
}

const WORDS = ['alternative', 'alternativeTitle', 'strategy', 'strategyTitle', 'endCause', 'endUnit'];

/** Fixed types, so that a column does not change its type with its values. */
function arrowType(column: string): DataType {
  if (WORDS.includes(column)) return dictionary(utf8());
  if (column === 'censored') return bool();
  return column === 'draw' ? int32() : float64();
}
