/** The shipped table of typical appliances, data/appliances.csv. Its columns are explained in data/README.md. */
import { csvParseRows } from 'd3-dsv';
import { appliance } from '../scenario/schema.ts';
import { applianceFaults } from './appliance-faults.ts';

/** An appliance as it would be written in a scenario, defaults left out. */
export type TypicalAppliance = Readonly<Record<string, unknown>>;

/** Empty cells are ''. */
type TableRow = Readonly<Record<string, string>>;

const TEXTS = ['title', 'kind', 'does', 'surroundings'];
const NUMBERS = [
  'runningW',
  'startingW',
  'onMinutes',
  'dutyFraction',
  'warmerPerC',
  'usesPerDay',
  'minutesPerUse',
  'lengthScatterFraction',
  'litFraction',
  'setC',
  'bandC',
  'surroundingsOffsetC',
  'timeConstantHours',
  'dutySurroundingsC',
  'limitC',
  'dayScatterFraction',
];

/**
 * Reads the table: rows by id, each with the keys its kind of appliance takes in a scenario and no others. Columns
 * that only inform people (volts, labels, sources) are left out.
 *
 * @param text CSV with a header.
 * @param fileName as told in messages.
 * @throws Error naming every row that is not a possible appliance.
 */
export function readTypicalAppliances(
  text: string,
  fileName = 'appliances.csv',
): ReadonlyMap<string, TypicalAppliance> {
  const table = new Map<string, TypicalAppliance>();
  const faults: string[] = [];
  for (const row of applianceRows(text)) {
    const id = row['id'] ?? '';
    const written = writtenOf(row);
    faults.push(...rowFaults(written).map((fault) => `  row "${id}": ${fault}`));
    if (table.has(id)) faults.push(`  row "${id}" is there twice`);
    table.set(id, written);
  }
  if (faults.length > 0)
    throw new Error(`${fileName} holds appliances that cannot be:\n${faults.join('\n')}`);
  return table;
}

/** Every row with every column, as written. Built without code made from text, which a page's policy forbids. */
export function applianceRows(text: string): TableRow[] {
  const [columns = [], ...rows] = csvParseRows(text);
  return rows.map((row) => Object.fromEntries(columns.map((name, k) => [name, row[k] ?? ''])));
}

function writtenOf(row: TableRow): TypicalAppliance {
  const written: Record<string, unknown> = {};
  for (const key of TEXTS) if (isFilled(row[key])) written[key] = row[key];
  for (const key of NUMBERS) if (isFilled(row[key])) written[key] = Number(row[key]);
  if (isFilled(row['hourWeights'])) written['hourWeights'] = row['hourWeights'].split(' ').map(Number);
  if (isFilled(row['windows'])) written['windows'] = row['windows'].split(' ');
  return written;
}

function isFilled(cell: string | undefined): cell is string {
  return cell !== undefined && cell !== '';
}

function rowFaults(written: TypicalAppliance): readonly string[] {
  const checked = appliance.safeParse(written);
  if (checked.success) return applianceFaults(checked.data);
  return checked.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
}
