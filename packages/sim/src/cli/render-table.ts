/** A table for a terminal: names on the left, columns of figures on the right. */
import { toLeft, toRight, wrapLines } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

export interface Column<One> {
  readonly head: readonly [string, string];
  readonly width: number;
  readonly cell: (one: One) => string;
}

export interface TerminalTable<One> {
  /** The two lines above the columns. */
  readonly heads: readonly string[];
  /** A row; a name too long for its line goes on in the next. `mark`, if any, fills the indent. */
  readonly row: (one: One, name: string, mark?: string) => string[];
}

/**
 * A table as wide as the terminal. A narrow one goes without the last columns.
 *
 * @param leastName width that is left for names whatever the columns
 * @param indent width before them
 */
export function terminalTable<One>(
  all: readonly Column<One>[],
  leastName: number,
  indent: number,
  look: TerminalLook,
  style: Style,
): TerminalTable<One> {
  let used = indent + leastName;
  const columns = all.filter(({ width }) => (used += width) <= look.width);
  const nameWidth = look.width - indent - columns.reduce((sum, { width }) => sum + width, 0);
  const blank = ' '.repeat(indent);
  const across = (cell: (column: Column<One>) => string) =>
    columns.map((column) => toRight(cell(column), column.width)).join('');
  return {
    heads: [0, 1].map((line) =>
      style.quiet(blank + ' '.repeat(nameWidth) + across(({ head }) => head[line]!).trimEnd()),
    ),
    row: (one, name, mark = blank) => {
      const [first = '', ...more] = wrapLines(name, nameWidth - 1);
      return [
        mark + toLeft(first, nameWidth) + across(({ cell }) => cell(one)),
        ...more.map((part) => blank + part),
      ];
    },
  };
}
