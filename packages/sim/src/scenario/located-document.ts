/** A parsed file that knows on which line each part stands. YAML by `yaml`, JSON with comments by `jsonc-parser`. */
import { findNodeAtLocation, parseTree, printParseErrorCode, getNodeValue, type Node as JsonNode, type ParseError } from 'jsonc-parser';
import { isMap, isScalar, isSeq, LineCounter, parseDocument, type Document } from 'yaml';
import { ScenarioError, type Finding } from './findings.ts';

export type Path = readonly (string | number)[];

export interface LocatedDocument {
  readonly file: string;
  readonly value: unknown;
  /** Line of the part at `path`, or of the nearest part around it. */
  lineOf(path: Path): number;
}

/** Reads YAML, or JSON with comments when the text begins with a brace. Throws ScenarioError on bad syntax. */
export function parseLocated(text: string, file: string): LocatedDocument {
  return text.trimStart().startsWith('{') || /^\s*\/[/*]/.test(text) ? parseJson(text, file) : parseYaml(text, file);
}

function syntaxFinding(file: string, line: number, message: string): Finding {
  return { file, line, path: '', found: message, expected: 'text that can be read as YAML or JSON', hint: undefined };
}

function parseYaml(text: string, file: string): LocatedDocument {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  if (document.errors.length > 0) {
    throw new ScenarioError(document.errors.map((e) => syntaxFinding(file, lines.linePos(e.pos[0]).line, `a slip in the layout (${e.message})`)));
  }
  return { file, value: document.toJS(), lineOf: (path) => lines.linePos(yamlOffset(document, path)).line };
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
    throw new ScenarioError(errors.map((e) => syntaxFinding(file, lineAt(e.offset), `a slip in the layout (${printParseErrorCode(e.error)})`)));
  }
  return { file, value: getNodeValue(root) as unknown, lineOf: (path) => lineAt(jsonOffset(root, path)) };
}

function jsonOffset(root: JsonNode, path: Path): number {
  for (let length = path.length; length > 0; length--) {
    const node = findNodeAtLocation(root, path.slice(0, length));
    if (node !== undefined) return node.parent?.type === 'property' ? node.parent.offset : node.offset;
  }
  return root.offset;
}
