/** A parsed file that knows on which line each part stands. YAML by `yaml`, JSON with comments by `jsonc-parser`. */
import {
  findNodeAtLocation,
  parseTree,
  printParseErrorCode,
  getNodeValue,
  type Node as JsonNode,
  type ParseError,
} from 'jsonc-parser';
import { isMap, isScalar, isSeq, LineCounter, parseDocument, visit, type Document } from 'yaml';
import { ScenarioError, type Finding } from './findings.ts';
import { yamlSlips } from './yaml-slips.ts';

export type Path = readonly (string | number)[];

export interface LocatedDocument {
  readonly file: string;
  readonly value: unknown;
  /** Line of the part at `path`, or of the nearest part around it. */
  lineOf(path: Path): number;
}

const BYTE_ORDER_MARK = /^\uFEFF/;

/** Reads YAML, or JSON with comments when the text begins with a brace. Throws ScenarioError on bad syntax. */
export function parseLocated(text: string, file: string): LocatedDocument {
  const plain = text.replace(BYTE_ORDER_MARK, '');
  return plain.trimStart().startsWith('{') || /^\s*\/[/*]/.test(plain)
    ? parseJson(plain, file)
    : parseYaml(plain, file);
}

function syntaxFinding(file: string, line: number, message: string): Finding {
  return {
    file,
    line,
    path: '',
    found: message,
    expected: 'text that can be read as YAML or JSON',
    hint: undefined,
  };
}

function parseYaml(text: string, file: string): LocatedDocument {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const lineAt = (offset: number) => Math.max(1, lines.linePos(offset).line);
  const slips = yamlSlips(document.errors, text, lineAt).map(({ line, slip }): Finding => ({
    file,
    line,
    path: '',
    ...slip,
  }));
  if (slips.length === 0) slips.push(...aliasFaults(document, file, lineAt));
  if (slips.length > 0) throw new ScenarioError(slips);
  return { file, value: yamlValue(document, file), lineOf: (path) => lineAt(yamlOffset(document, path)) };
}

/** Aliases (`*name`) of an anchor that is not there, or that stand inside their own. */
function aliasFaults(document: Document, file: string, lineAt: (offset: number) => number): Finding[] {
  const faults: Finding[] = [];
  visit(document, {
    Alias(_, alias, around) {
      const target = alias.resolve(document);
      const line = lineAt(alias.range?.[0] ?? 0);
      if (target === undefined)
        faults.push(
          syntaxFinding(file, line, `*${alias.source}, of which there is no &${alias.source} above`),
        );
      else if (around.includes(target))
        faults.push(syntaxFinding(file, line, `*${alias.source} inside &${alias.source} itself`));
    },
  });
  return faults;
}

/** `toJS` refuses aliases of aliases that would grow past all bounds. */
function yamlValue(document: Document, file: string): unknown {
  try {
    return document.toJS();
  } catch {
    throw new ScenarioError([syntaxFinding(file, 1, 'aliases that repeat each other too often')]);
  }
}

/** Offset of the key (in a map) or item (in a list) at `path`, as deep as it exists. */
function yamlOffset(document: Document, path: Path): number {
  let node: unknown = document.contents;
  let offset = 0;
  for (const step of path) {
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
      if (pair === undefined) break;
      offset = isScalar(pair.key) ? (pair.key.range?.[0] ?? offset) : offset;
      node = pair.value;
    } else if (isSeq(node)) {
      const item = node.items[Number(step)] as { range?: [number, number, number] } | undefined;
      if (item === undefined) break;
      offset = item.range?.[0] ?? offset;
      node = item;
    } else break;
  }
  return offset;
}

function parseJson(text: string, file: string): LocatedDocument {
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { allowTrailingComma: true });
  const lineAt = (offset: number) => text.slice(0, offset).split('\n').length;
  if (errors.length > 0 || root === undefined) {
    throw new ScenarioError(
      errors.map((e) =>
        syntaxFinding(
          file,
          lineAt(e.offset),
          `a slip in the layout (${inWords(printParseErrorCode(e.error))})`,
        ),
      ),
    );
  }
  const twice = repeatedKeys(root);
  if (twice.length > 0) {
    throw new ScenarioError(
      twice.map(({ offset, value }) =>
        syntaxFinding(file, lineAt(offset), `a second ${JSON.stringify(value)} in one block`),
      ),
    );
  }
  return { file, value: getNodeValue(root) as unknown, lineOf: (path) => lineAt(jsonOffset(root, path)) };
}

/** `CommaExpected` as "comma expected". */
function inWords(code: string): string {
  return code.replace(/(?<!^)[A-Z]/g, (letter) => ` ${letter}`).toLowerCase();
}

/** Keys that stand twice in one block: only one of them would count. */
function repeatedKeys(node: JsonNode): JsonNode[] {
  const inside = node.children ?? [];
  const keys = node.type === 'object' ? inside.flatMap((property) => property.children?.[0] ?? []) : [];
  const repeated = keys.filter((key, i) => keys.findIndex((other) => other.value === key.value) < i);
  return [...repeated, ...inside.flatMap(repeatedKeys)];
}

function jsonOffset(root: JsonNode, path: Path): number {
  for (let length = path.length; length > 0; length--) {
    const node = findNodeAtLocation(root, path.slice(0, length));
    if (node !== undefined) return node.parent?.type === 'property' ? node.parent.offset : node.offset;
  }
  return root.offset;
}
