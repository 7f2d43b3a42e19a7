/** What an editor shows of the public face: every exported name has a description on its own declaration. */
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { SOURCE } from './source-graph.ts';

const entries = ['index.ts', 'node.ts'].map((name) => join(SOURCE, name));
const program = ts.createProgram(entries, {
  module: ts.ModuleKind.NodeNext,
  target: ts.ScriptTarget.ESNext,
  allowImportingTsExtensions: true,
  noEmit: true,
  skipLibCheck: true,
});
const checker = program.getTypeChecker();

/** The symbols that an entry exports, by name, each as it is declared. */
function exportsOf(entry: string): [string, ts.Symbol][] {
  const source = checker.getSymbolAtLocation(program.getSourceFile(entry)!)!;
  return checker.getExportsOfModule(source).map((symbol) => {
    const isAlias = (symbol.flags & ts.SymbolFlags.Alias) !== 0;
    return [symbol.name, isAlias ? checker.getAliasedSymbol(symbol) : symbol];
  });
}

describe.each(entries)('every name that %s exports', (entry) => {
  it('has a description', () => {
    const symbols = exportsOf(entry);
    expect(symbols.length).toBeGreaterThan(10);
    const bare = symbols.filter(
      ([, symbol]) => ts.displayPartsToString(symbol.getDocumentationComment(checker)).trim() === '',
    );
    expect(
      bare.map(
        ([name, symbol]) =>
          `${name} ${symbol.declarations?.[0]?.getSourceFile().fileName.replace(SOURCE, '')}`,
      ),
    ).toEqual([]);
  });
});
