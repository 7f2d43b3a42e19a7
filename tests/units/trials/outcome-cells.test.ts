import { describe, expect, it } from 'vitest';
import { outcomeCells } from '../../../packages/sim/src/trials/outcome-cells.ts';
import { joinRows } from '../../../packages/sim/src/trials/shard.ts';
import { fabricatedOutline, fabricatedRows, reversedRows } from './fabricated-study.ts';

const outline = fabricatedOutline();

describe('outcomeCells', () => {
  it('lines every cell up by draw, whatever the order of the rows', () => {
    const rows = fabricatedRows(outline, 5, 12);
    const [plain, reversed] = [outcomeCells(outline, rows), outcomeCells(outline, reversedRows(rows))];
    expect([...plain.draws]).toEqual([5, 6, 7, 8, 9, 10, 11]);
    expect([...plain.column(1, 2, 'draw')]).toEqual([...plain.draws]);
    expect([...new Set(plain.column(1, 2, 'strategy'))]).toEqual([2]);
    expect(reversed.column(1, 2, 'runtimeMinutes')).toEqual(plain.column(1, 2, 'runtimeMinutes'));
  });

  it('says so when there are no rows', () => {
    expect(() => outcomeCells(outline, { length: 0, columns: {} })).toThrow(
      'there are no outcome rows yet: run at least one draw',
    );
  });

  it('names the draw that is there twice', () => {
    const rows = joinRows([fabricatedRows(outline, 0, 3), fabricatedRows(outline, 2, 4)]);
    expect(() => outcomeCells(outline, rows)).toThrow(
      'draw 2 of alternative "as-is", strategy "everything" is there twice',
    );
  });

  it('names the draw that lacks a row', () => {
    const whole = fabricatedRows(outline, 0, 3);
    const cut = {
      length: 17,
      columns: Object.fromEntries(Object.entries(whole.columns).map(([name, v]) => [name, v.slice(0, 17)])),
    };
    expect(() => outcomeCells(outline, cut)).toThrow(
      'draw 2 of alternative "two-modules", strategy "essentials" is missing',
    );
  });

  it('names a column that is not there', () => {
    expect(() => outcomeCells(outline, fabricatedRows(outline, 0, 1)).column(0, 0, 'fuel')).toThrow(
      'outcome rows lack the column "fuel"',
    );
  });

  it('refuses rows of another study', () => {
    const small = fabricatedOutline({ strategies: outline.strategies.slice(0, 1) });
    expect(() => outcomeCells(small, fabricatedRows(outline, 0, 1))).toThrow(
      'outcome row 1 names alternative 0, strategy 1',
    );
  });
});
