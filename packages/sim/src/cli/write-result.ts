/** `--out`: a result's tables and the result itself, as files. */
import type { ColumnTable } from 'arquero';
import { writeWhole, type FileToWrite } from '../node/write-whole.ts';
import type { Provenance } from '../trials/study-summary.ts';
import { remark, type OutputOptions } from './output.ts';

/**
 * Writes `<table>.arrow`, `<table>.csv` for each table and `<name>.json`; nothing when no folder is given: tables are
 * made, and what makes them loaded, only for it.
 */
export async function writeResult(
  options: OutputOptions & { readonly out?: string },
  result: { readonly provenance: Provenance },
  name: string,
  makeTables: () => Promise<Readonly<Record<string, ColumnTable>>>,
): Promise<void> {
  if (options.out === undefined) return;
  const { jsonFile, tableFiles } = await import('../trials/table-files.ts');
  const tables = await makeTables();
  const files = [
    ...Object.entries(tables).flatMap(([table, rows]) => tableFiles(table, rows, result.provenance)),
    jsonFile(name, result),
  ];
  await writeFiles(options.out, files, options);
}

/** Writes into a folder, and says what. */
export async function writeFiles(
  folder: string,
  files: readonly FileToWrite[],
  options: OutputOptions,
): Promise<void> {
  await writeWhole(folder, files);
  remark(`Written to ${folder}: ${files.map((f) => f.name).join(', ')}.`, options);
}
