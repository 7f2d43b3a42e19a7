/**
 * Cells that carry only what they name.
 *
 * The kit turns a cell's `import {a} from "b"` into a dynamic import that looks into the whole of b, so a page would
 * carry all of b. Here the cell imports from a small module of its own that exports `a` alone; the bundler leaves the
 * rest of b out. It holds for our packages and for an analyst's own alike.
 */
import { parseJavaScript, type Notebook } from '@observablehq/notebook-kit';

type Cell = Notebook['cells'][number];

/** What stands before the description of such a module in its name. */
const ONLY = 'rideout-only:';
/** A package's name; a file beside the notebook is taken as it is. */
export const PACKAGE = /^(?:@[a-z][\w-]*\/)?[a-z][\w-]*(?:\/|$)/;

/** A notebook whose imports of packages name what they take. */
export function withNamedImports(notebook: Notebook): Notebook {
  return { ...notebook, cells: notebook.cells.map((cell) => (cell.mode === 'js' ? named(cell) : cell)) };
}

/** The code of such a module; undefined for any other name. */
export function namedImportCode(id: string): string | undefined {
  if (!id.startsWith(ONLY)) return undefined;
  const { source, names } = JSON.parse(decodeURIComponent(id.slice(ONLY.length))) as Taken;
  return `export { ${[...new Set(names)].join(', ')} } from ${JSON.stringify(source)};`;
}

export function isNamedImport(source: string): boolean {
  return source.startsWith(ONLY);
}

interface Taken {
  readonly source: string;
  readonly names: readonly string[];
}

interface Declaration {
  readonly type: string;
  readonly source: { readonly value: string; readonly start: number; readonly end: number };
  readonly specifiers: readonly {
    readonly type: string;
    readonly imported?: { readonly name?: string };
  }[];
}

/** From the last to the first, so that positions stay true. */
function named(cell: Cell): Cell {
  const value = importsOf(cell).reduceRight((code, { source, specifiers }) => {
    const names = specifiers.map(({ type, imported }) =>
      type === 'ImportDefaultSpecifier' ? 'default' : imported?.name,
    );
    if (!PACKAGE.test(source.value) || names.length === 0 || names.includes(undefined)) return code;
    const taken = encodeURIComponent(JSON.stringify({ source: source.value, names }));
    return `${code.slice(0, source.start)}"${ONLY}${taken}"${code.slice(source.end)}`;
  }, cell.value);
  return { ...cell, value };
}

function importsOf({ value }: Cell): Declaration[] {
  const { body } = parseJavaScript(value);
  const statements = (Array.isArray(body) ? body : 'body' in body ? body.body : []) as Declaration[];
  return statements.filter(({ type }) => type === 'ImportDeclaration');
}
