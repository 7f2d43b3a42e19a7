import { tableFromIPC } from '@uwdata/flechette';
import { fromCSV } from 'arquero';
import { describe, expect, it } from 'vitest';
import { exportFiles } from '../../../packages/sim/src/trials/export-files.ts';
import { summarise } from '../../../packages/sim/src/trials/summarise.ts';
import { outcomesTable } from '../../../packages/sim/src/trials/tables.ts';
import { fabricatedOutline, fabricatedRows, reversedRows } from './fabricated-study.ts';

const outline = fabricatedOutline({
  seed: 'a "quoted", odd seed',
  alternatives: [{ id: 'as-is', title: 'As it stands, with "commas"\nand a break' }],
});
const rows = fabricatedRows(outline, 0, 25);
const summary = summarise(outline, rows);
const files = exportFiles(outline, rows, summary);
const bytesOf = (name: string) => files.find((file) => file.name === name)!.bytes;
const textOf = (name: string) => new TextDecoder().decode(bytesOf(name));
const outcomes = outcomesTable(outline, rows).objects() as Record<string, unknown>[];

describe('exportFiles', () => {
  it('writes three files', () =>
    expect(files.map((f) => f.name)).toEqual(['outcomes.arrow', 'outcomes.csv', 'study.json']));

  it('is the same to the byte whatever the order of the rows', () => {
    expect(exportFiles(outline, reversedRows(rows), summarise(outline, reversedRows(rows)))).toEqual(files);
  });

  it('outcomes.csv reads back to the same values, bit for bit', () => {
    const read = fromCSV(textOf('outcomes.csv'), { autoType: true }).objects() as Record<string, unknown>[];
    expect(read).toHaveLength(75);
    let compared = 0;
    read.forEach((row, i) =>
      Object.entries(outcomes[i]!).forEach(([name, value]) => {
        expect(row[name], name).toBe(value);
        compared += 1;
      }),
    );
    expect(compared).toBe(75 * Object.keys(outcomes[0]!).length);
  });

  it('outcomes.csv says in every row where it comes from, in a column like any other', () => {
    const read = fromCSV(textOf('outcomes.csv')).array('study') as string[];
    expect([...new Set(read)]).toEqual([
      'scenario 3f2a9c41d07b; seed a "quoted", odd seed; draws 25; version 0.1.0',
    ]);
  });

  it('outcomes.arrow reads back to the same values with provenance in the schema', () => {
    const arrow = tableFromIPC(bytesOf('outcomes.arrow'), { useBigInt: false });
    expect(arrow.numRows).toBe(75);
    expect(Object.fromEntries(arrow.schema.metadata!)).toEqual({
      'rideout.scenarioHash': outline.scenarioHash,
      'rideout.scenarioTitle': 'A made-up house on a hill, January',
      'rideout.seed': 'a "quoted", odd seed',
      'rideout.draws': '25',
      'rideout.version': '0.1.0',
      'rideout.weatherName': 'made-up normals',
    });
    expect(arrow.toArray()).toEqual(outcomes);
  });

  it('study.json reads back to the summary', () => expect(JSON.parse(textOf('study.json'))).toEqual(summary));
});
