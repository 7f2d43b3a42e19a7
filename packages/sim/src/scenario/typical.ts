/** Appliances written as `typical: refrigerator`, filled in from the shipped table. */
import type { Finding } from './findings.ts';
import type { LocatedDocument, Path } from './located-document.ts';
import { meantHint } from './nearest.ts';
import { spellPath } from './schema-findings.ts';

/** Rows of data/appliances.csv by id, as they would be written in a scenario. */
export type TypicalAppliances = ReadonlyMap<string, Readonly<Record<string, unknown>>>;

/** A copy of `value` with every `{ typical: id, … }` replaced by the table's row and the keys given beside it. */
export function fillTypical(
  value: unknown,
  table: TypicalAppliances,
  document: LocatedDocument,
  findings: Finding[],
  path: Path = [],
): unknown {
  if (Array.isArray(value))
    return value.map((item, i) => fillTypical(item, table, document, findings, [...path, i]));
  if (typeof value !== 'object' || value === null) return value;
  const block = value as Record<string, unknown>;
  const filled = Object.fromEntries(
    Object.entries(block).map(([key, part]) => [
      key,
      fillTypical(part, table, document, findings, [...path, key]),
    ]),
  );
  if (typeof block['typical'] !== 'string') return filled;
  const { typical, ...given } = filled as { typical: string };
  const row = table.get(typical);
  if (row === undefined) {
    findings.push({
      file: document.file,
      line: document.lineOf([...path, 'typical']),
      path: spellPath(document.value, [...path, 'typical']),
      found: JSON.stringify(typical),
      expected: 'an appliance of data/appliances.csv',
      hint: meantHint(typical, [...table.keys()]),
    });
    return { kind: 'steady', runningW: 0 }; // stands in: what is given beside it cannot be checked
  }
  return { id: typical, ...row, ...given };
}
