/** Columns of a terminal's table: as many as fit. */
import { describe, expect, it } from 'vitest';
import { styleFor } from '../../../packages/sim/src/cli/render-style.ts';
import { terminalTable, type Column } from '../../../packages/sim/src/cli/render-table.ts';

const column = (head: string): Column<string> => ({ head: [head, ''], width: 10, cell: (one) => one });

describe('a table', () => {
  const at = (width: number) => {
    const look = { width, colour: false };
    return terminalTable([column('first'), column('second')], 20, 2, look, styleFor(look));
  };

  it('that fits to the last column keeps it; one column less of the terminal goes without', () => {
    expect(at(42).heads[0]).toMatch(/first +second$/);
    expect(at(42).row('7', 'name')).toEqual([`  name${' '.repeat(16)}${' '.repeat(9)}7${' '.repeat(9)}7`]);
    expect(at(41).heads[0]).toMatch(/first$/);
    expect(at(41).row('7', 'name')[0]).toHaveLength(41);
  });
});
