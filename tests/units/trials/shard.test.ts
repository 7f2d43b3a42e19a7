import { describe, expect, it } from 'vitest';
import {
  columnsOf,
  END_CAUSES,
  joinRows,
  OUTCOME_COLUMNS,
  prepareStudy,
  runShard,
} from '../../../packages/sim/src/index.ts';
import { tinyScenario } from '../step/tiny-house.ts';

const scenario = tinyScenario({
  circuits: { a: { watts: 400, need: 'talk' }, b: { watts: 200, need: 'food', tier: 2 } },
  hours: 24,
});
const study = prepareStudy(
  {
    ...scenario,
    alternatives: [...scenario.alternatives, { ...scenario.alternatives[0]!, id: 'again', title: 'Again' }],
  },
  { seed: 'x' },
);

describe('runShard', () => {
  it('writes one row per draw, alternative and strategy, in that order, with every column', () => {
    const rows = runShard(study, 4, 7);
    expect(rows.length).toBe(3 * 2 * 1);
    expect(Array.from(rows.columns['draw']!)).toEqual([4, 4, 5, 5, 6, 6]);
    expect(Array.from(rows.columns['alternative']!)).toEqual([0, 1, 0, 1, 0, 1]);
    expect(Array.from(rows.columns['strategy']!)).toEqual([0, 0, 0, 0, 0, 0]);
    const needs = [
      'need:talk:firstMinute',
      'need:talk:minutes',
      'need:food:firstMinute',
      'need:food:minutes',
    ];
    expect(Object.keys(rows.columns)).toEqual([...OUTCOME_COLUMNS, ...needs]);
    expect(columnsOf(study)).toEqual(Object.keys(rows.columns));
    expect(Object.values(rows.columns).every((column) => column.length === 6)).toBe(true);
  });

  it('gives two alternatives that are alike the same outcomes', () => {
    const { columns } = runShard(study, 0, 5);
    for (const [name, values] of Object.entries(columns)) {
      if (name !== 'alternative')
        for (let row = 0; row < 10; row += 2) expect(values[row + 1], name).toBe(values[row]);
    }
  });

  it('says nothing with NaN but that something did not happen', () => {
    const { columns } = runShard(study, 0, 20);
    const mayNotHappen = [
      'endUnit',
      'firstShedMinute',
      'first240LossMinute',
      'firstBlackoutMinute',
      'minutesUnit1Down',
      'fuelGoneMinute',
    ];
    for (const [name, values] of Object.entries(columns)) {
      if (!mayNotHappen.includes(name) && !name.endsWith(':firstMinute'))
        expect(values.every(Number.isFinite), name).toBe(true);
    }
    expect(columns['minutesUnit1Down']!.every(Number.isNaN)).toBe(true);
    expect(columns['endCause']!.every((cause) => END_CAUSES[cause] !== undefined)).toBe(true);
  });

  it('of no draws has no rows', () => {
    const rows = runShard(study, 3, 3);
    expect(rows.length).toBe(0);
    expect(Object.keys(rows.columns)).toEqual(columnsOf(study));
  });

  it.each([
    [5, 2, 'to: found 2; expected a whole number of at least from, 5'],
    [-1, 2, 'from: found -1; expected a whole number of at least 0'],
    [0.5, 2, 'from: found 0.5; expected a whole number of at least 0'],
    [0, 1.5, 'to: found 1.5; expected a whole number of at least 0'],
    [0, NaN, 'to: found NaN; expected a whole number of at least 0'],
  ])('of draws %d to %d, which there are not, is refused', (from, to, message) => {
    expect(() => runShard(study, from, to)).toThrow(new RangeError(message));
  });
});

describe('joinRows', () => {
  it('puts shards one after another', () => {
    const joined = joinRows([runShard(study, 2, 3), runShard(study, 0, 2)]);
    expect(Array.from(joined.columns['draw']!)).toEqual([2, 2, 0, 0, 1, 1]);
    expect(joined.length).toBe(6);
  });

  it('of nothing is nothing', () => {
    expect(joinRows([])).toEqual({ length: 0, columns: {} });
  });
});
