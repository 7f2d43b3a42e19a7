/** `--out`: a result's tables and the result itself, as files. */
import type { ColumnTable } from 'arquero';
import { writeWhole } from '../node/write-whole.ts';
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
  await writeWhole(options.out, files);
  remark(`Written to ${options.out}: ${files.map((f) => f.name).join(', ')}.`, options);
}
