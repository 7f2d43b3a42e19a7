/**
 * The notebook kit's standard library from this machine's packages.
 *
 * The kit loads its libraries, file readers and sample data from a network address when a page runs. A page that
 * must open from a memory stick in an outage cannot. So the modules that hold such addresses are replaced, cells that
 * need what is left out are refused while the page is built, and so is an import from any address.
 */
import { fileURLToPath } from 'node:url';
import { transpile, type Notebook } from '@observablehq/notebook-kit';
import type { Plugin } from 'vite';
import { isNamedImport, namedImportCode, PACKAGE, withNamedImports } from './named-imports.ts';
import { PublishError } from './publish-error.ts';

/** What a cell can name without importing it, beside the kit's own that need no network (view, width, Generators, …). */
const PROVIDED: Readonly<Record<string, string>> = {
  aq: `import('arquero')`,
  Plot: `import('@observablehq/plot')`,
  Inputs: `import('@observablehq/inputs')`,
  htl: `import('htl')`,
  html: `import('htl').then((htl) => htl.html)`,
  svg: `import('htl').then((htl) => htl.svg)`,
  md: `import('observable:runtime/stdlib/md.js').then((kit) => kit.md)`,
  // the kit's own, but for moments at which the page stands nowhere (hidden, not laid out yet): charts have no room then
  width: `import('observable:runtime/stdlib/generators/width.js').then(async function* (kit) {
    const widths = kit.width(document.querySelector('main') ?? document.body);
    for await (const px of widths) if (px > 0) yield px;
  })`,
};

/** The kit's names that need a network, a server, or files beside the page. */
const LEFT_OUT = new Set([
  ...[
    '_',
    'Arrow',
    'd3',
    'dot',
    'duckdb',
    'DuckDBClient',
    'DatabaseClient',
    'echarts',
    'FileAttachment',
    'Interpreter',
  ],
  ...['L', 'mapboxgl', 'mermaid', 'React', 'ReactDOM', 'tex', 'topojson', 'vl'],
  ...[
    'aapl',
    'alphabet',
    'cars',
    'citywages',
    'diamonds',
    'flare',
    'industries',
    'miserables',
    'olympians',
    'penguins',
    'pizza',
    'weather',
  ],
]);

const LIBRARIES = 'recommendedLibraries.js';
/** Kit modules that stay empty, with the exports that the kit itself names. */
const EMPTIED: Readonly<Record<string, readonly string[]>> = {
  'fileAttachment.js': ['FileAttachment', 'fileAttachments', 'registerFile', 'requireFileRegistration'],
  'databaseClient.js': ['DatabaseClient'],
  'interpreter.js': ['Interpreter'],
  'sampleDatasets.js': [],
};
const HERE = fileURLToPath(import.meta.url);
const OURS = '\0rideout:';

export interface LocalLibrary {
  readonly plugin: Plugin;
  /** Looks through the cells first: what they name is carried in the page, and nothing else. */
  readonly transformNotebook: (notebook: Notebook) => Notebook;
}

/** For one page; with every library for pages that are looked at while they change. */
export function localLibrary(libraries?: 'every library'): LocalLibrary {
  let named: readonly string[] = [];
  let page: string | undefined; // who imports what a cell names
  return {
    transformNotebook(notebook) {
      named = namesUsed(notebook);
      return libraries ? notebook : withNamedImports(notebook);
    },
    plugin: {
      name: 'rideout-local-library',
      enforce: 'pre',
      async resolveId(source, asker, options) {
        if (isNamedImport(source)) {
          page = asker;
          return OURS + source;
        }
        const importer = asker?.startsWith(OURS) && isNamedImport(asker.slice(OURS.length)) ? page : asker;
        const ours = ourModule(source, importer);
        if (ours !== undefined || !PACKAGE.test(source) || importer === HERE) return ours;
        // a package that the notebook's own folder does not have is taken from beside this one
        return (
          (await this.resolve(source, importer, { ...options, skipSelf: true })) ??
          this.resolve(source, HERE, options)
        );
      },
      load(id) {
        if (!id.startsWith(OURS)) return undefined;
        const name = id.slice(OURS.length);
        const only = namedImportCode(name);
        if (only !== undefined) return { code: only, moduleSideEffects: false };
        return name === LIBRARIES
          ? libraryCode(libraries ? Object.keys(PROVIDED) : named)
          : emptyCode(EMPTIED[name]!);
      },
    },
  };
}

function ourModule(source: string, importer: string | undefined): string | undefined {
  if (/^(https?:|npm:|jsr:|\/\/)/.test(source)) {
    throw new PublishError(`it imports "${source}", but works without a network: import local packages only`);
  }
  const name = source.split('/').pop()!;
  const replaced = importer?.includes('notebook-kit') && (name === LIBRARIES || name in EMPTIED);
  return replaced ? OURS + name : undefined;
}

function libraryCode(named: readonly string[]): string {
  return named
    .flatMap((name) => (PROVIDED[name] ? [`export const ${name} = () => ${PROVIDED[name]};`] : []))
    .join('\n');
}

function emptyCode(names: readonly string[]): string {
  return [...names.map((name) => `export const ${name} = undefined;`), 'export default undefined;'].join(
    '\n',
  );
}

const RUN_IN_THE_PAGE = ['js', 'ts', 'ojs', 'md', 'html'];

/** Names that the cells use and do not define. Throws for one that is left out. */
function namesUsed({ cells }: Notebook): string[] {
  const foreign = cells.find((cell) => !RUN_IN_THE_PAGE.includes(cell.mode));
  if (foreign)
    throw new PublishError(
      `cell ${foreign.id} is ${foreign.mode}; pages run scripts, Markdown and HTML only`,
    );
  const code = cells.map((cell) => ({ id: cell.id, ...transpile(cell) }));
  const defined = new Set(code.flatMap(({ outputs = [], output }) => [...outputs, output]));
  const used = code.flatMap(({ id, inputs = [] }) =>
    inputs.filter((name) => !defined.has(name)).map((name) => ({ id, name })),
  );
  const missing = used.find(({ name }) => LEFT_OUT.has(name));
  if (missing) {
    throw new PublishError(
      `cell ${missing.id} names ${missing.name}, which pages go without, as it needs a network or files beside the page; ` +
        `there are ${Object.keys(PROVIDED).join(', ')}, and data comes with the page`,
    );
  }
  return [...new Set(used.map(({ name }) => name))];
}
