import { describe, expect, it } from 'vitest';
import { summarise } from '../../../packages/sim/src/trials/summarise.ts';
import {
  differencesTable,
  endsTable,
  needsTable,
  outcomesTable,
  summaryTable,
  survivalTable,
} from '../../../packages/sim/src/trials/tables.ts';
import { fabricatedOutline, fabricatedRows, reversedRows } from './fabricated-study.ts';

const outline = fabricatedOutline();
const rows = fabricatedRows(outline, 0, 40);
const summary = summarise(outline, rows);

describe('outcomesTable', () => {
  const outcomes = outcomesTable(outline, rows);

  it('has a row per draw, alternative and strategy in that order, whatever the order of the rows', () => {
    expect(outcomes.numRows()).toBe(240);
    expect(outcomes.objects({ limit: 2 })).toMatchObject([
      { draw: 0, strategy: 'everything' },
      { draw: 0, strategy: 'by-charge' },
    ]);
    expect(outcomesTable(outline, reversedRows(rows)).objects()).toEqual(outcomes.objects());
  });

  it('joins ids, titles and words', () => {
    const row = outcomes.object(5);
    expect(row).toMatchObject({
      alternative: 'two-modules',
      alternativeTitle: 'Two modules per unit',
      strategy: 'essentials',
      strategyTitle: 'Essentials only, from the first minute to the last',
      endCause: 'overload trip',
      endUnit: 'east',
      censored: false,
    });
    expect(outcomes.columnNames().slice(0, 5)).toEqual([
      'draw',
      'alternative',
      'alternativeTitle',
      'strategy',
      'strategyTitle',
    ]);
  });

  it('tells minutes down by the id at that position of the list, and has no column for a unit that no household has', () => {
    const down = (ids: readonly string[]) =>
      outcomesTable({ ...outline, unitIds: ids }, rows)
        .columnNames()
        .filter((name) => /[dD]own/.test(name));
    expect(down(['east', 'west'])).toEqual(['unit.east.downMinutes', 'unit.west.downMinutes']);
    expect(down(['east'])).toEqual(['unit.east.downMinutes']);
    const row = outcomes.object(3) as Record<string, unknown>;
    const cell = { draw: row['draw'], alternative: row['alternative'], strategy: row['strategy'] };
    const at = Array.from({ length: rows.length }, (_, i) => i).find(
      (i) =>
        rows.columns['draw']![i] === cell.draw &&
        outline.alternatives[rows.columns['alternative']![i]!]!.id === cell.alternative &&
        outline.strategies[rows.columns['strategy']![i]!]!.id === cell.strategy,
    )!;
    expect(row['unit.east.downMinutes']).toBe(rows.columns['minutesUnit1Down']![at]);
  });

  it('has null where something did not happen, and no NaN anywhere', () => {
    expect(outcomes.get('firstShedMinute', 0)).toBeNull();
    const cells = outcomes.columnNames().flatMap((name) => Array.from(outcomes.array(name) as unknown[]));
    expect(cells.filter((value) => Number.isNaN(value))).toEqual([]);
    const stillRunning = outcomes.objects().filter((row) => (row as { censored: boolean }).censored);
    expect(stillRunning.length).toBeGreaterThan(0);
    for (const row of stillRunning) expect(row).toMatchObject({ endCause: 'still running', endUnit: null });
  });
});

describe('the tables of a summary', () => {
  it('summaryTable has a row per cell with every estimate and its limits', () => {
    const table = summaryTable(summary);
    expect(table.numRows()).toBe(6);
    const s = summary.strategies[4]!;
    expect(table.object(4)).toMatchObject({
      alternative: 'two-modules',
      strategy: 'by-charge',
      draws: 40,
      nineInTenDays: s.nineInTenDays.value,
      nineInTenDaysLow: s.nineInTenDays.low,
      reach7Days: s.reach[2]!.chance.value,
      reach7DaysHigh: s.reach[2]!.chance.high,
      servedTier1KWh: s.servedKWhByTier[0],
      'mean:trips': s.meanByColumn.trips,
    });
  });

  it('survivalTable holds every step of every curve', () => {
    const steps = summary.strategies.reduce((sum, s) => sum + s.curve.day.length, 0);
    expect(survivalTable(summary).numRows()).toBe(steps);
    expect(survivalTable(summary).object(0)).toMatchObject({ day: 0, survival: 1, high: 1 });
  });

  it('endsTable shares add up to the number of cells', () => {
    const fractions = endsTable(summary).array('fraction') as number[];
    expect(fractions.reduce((sum, f) => sum + f, 0)).toBeCloseTo(6, 12);
  });

  it('needsTable has a row per cell and need', () => expect(needsTable(summary).numRows()).toBe(12));

  it('differencesTable has a row per comparison', () => {
    expect(differencesTable(summary).numRows()).toBe(7);
    expect(differencesTable(summary).object(0)).toMatchObject({
      firstStrategy: 'by-charge',
      secondStrategy: 'everything',
      meanDays: summary.differences[0]!.meanDays.value,
    });
  });

  it('an empty list is an empty table', () =>
    expect(differencesTable({ ...summary, differences: [] }).numRows()).toBe(0));
});
