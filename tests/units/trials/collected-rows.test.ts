import { describe, expect, it } from 'vitest';
import { CollectedRows } from '../../../packages/sim/src/trials/collected-rows.ts';

const rowsOf = (from: number, to: number) => {
  const draw = Float64Array.from({ length: 2 * (to - from) }, (_, row) => from + Math.floor(row / 2));
  return { length: draw.length, columns: { draw, twice: draw.map((d) => 2 * d) } };
};

describe('collected rows', () => {
  it('are in draw order whatever order their shards come in', () => {
    const collected = new CollectedRows(['draw', 'twice'], 2);
    collected.reserve(5);
    for (const [from, to] of [
      [3, 5],
      [0, 1],
      [1, 3],
    ] as const)
      collected.add(from, rowsOf(from, to));
    expect(collected.first(5)).toStrictEqual(rowsOf(0, 5));
    expect(collected.first(2)).toStrictEqual(rowsOf(0, 2));
  });

  it('keep what is there when room is made for more', () => {
    const collected = new CollectedRows(['draw', 'twice'], 2);
    collected.reserve(2);
    collected.add(0, rowsOf(0, 2));
    collected.reserve(1);
    collected.reserve(4);
    collected.add(2, rowsOf(2, 4));
    expect(collected.first(4)).toStrictEqual(rowsOf(0, 4));
  });

  it('are none before the first', () => {
    expect(new CollectedRows(['draw'], 2).first(0)).toStrictEqual({
      length: 0,
      columns: { draw: new Float64Array(0) },
    });
  });
});
