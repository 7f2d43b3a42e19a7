/** What is wrong with the layout of a YAML file, in words for people who never heard of its grammar. */
import type { YAMLParseError } from 'yaml';
import type { Finding } from './findings.ts';

/** What was found and expected, for a finding. */
export type Slip = Pick<Finding, 'found' | 'expected' | 'hint'>;

const LAYOUT = 'text that can be read as YAML or JSON';
const SET_IN_ALIKE = 'lines of one block set in alike, each with a key, a colon and a value';

/** One slip for each line: what else a parser says of a line follows from the first. Tabs upset everything after them. */
export function yamlSlips(
  errors: readonly YAMLParseError[],
  text: string,
  lineAt: (offset: number) => number,
): { readonly line: number; readonly slip: Slip }[] {
  const tabs = errors.filter(({ code }) => code === 'TAB_AS_INDENT');
  const lines = new Set<number>();
  return (tabs.length > 0 ? tabs : errors).flatMap((error) => {
    const line = lineAt(error.pos[0]);
    if (lines.has(line)) return [];
    lines.add(line);
    return [{ line, slip: slipOf(error, text) }];
  });
}

function slipOf({ code, message, pos: [from] }: YAMLParseError, text: string): Slip {
  switch (code) {
    case 'TAB_AS_INDENT':
      return slip('a tab at the beginning of the line', 'spaces: YAML sets lines in with spaces only');
    case 'MULTIPLE_DOCS':
      return slip('a second document, parted off by --- or ...', 'one scenario in a file');
    case 'DUPLICATE_KEY':
      return slip(`a second ${JSON.stringify(keyOf(text, from))} in one block`, LAYOUT);
    case 'BAD_SCALAR_START':
      return slip(`a value that begins with ${text.charAt(from)}`, 'such a value in quotes');
    case 'BAD_DQ_ESCAPE':
      return slip(
        `${text.slice(from, from + 2)} in double quotes`,
        'a backslash in single quotes, or a doubled one',
      );
    case 'MISSING_CHAR':
      return /quote/.test(message)
        ? slip('a quote that is never closed', 'a quote at the end of the value, too')
        : slip('a line that is no key with a value', SET_IN_ALIKE);
    case 'BAD_INDENT':
      return /^Flow/.test(message)
        ? slip('a bracket that is never closed', 'a ] for every [ and a } for every {')
        : slip('a line set in otherwise than its block', SET_IN_ALIKE);
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
      return slip(
        'a line set in otherwise than its block, or with a colon too many or too few',
        `${SET_IN_ALIKE}; a value that holds a colon in quotes`,
      );
    default:
      return slip('a slip in the layout', LAYOUT);
  }
}

function slip(found: string, expected: string): Slip {
  return { found, expected, hint: undefined };
}

function keyOf(text: string, from: number): string {
  return (/^[^\n:]*/.exec(text.slice(from))?.[0] ?? '').trim().replace(/^(["'])(.*)\1$/, '$2');
}
