/** The schema's complaints as findings in the user's words. */
import type { z } from 'zod';
import type { Finding } from './findings.ts';
import type { LocatedDocument, Path } from './located-document.ts';
import { meantKey, unitHint } from './meant-key.ts';
import { meantHint } from './nearest.ts';
import { knownKeys } from './known-keys.ts';

type Issue = z.core.$ZodIssue;

/** What stands at a path of keys and positions; undefined when nothing does. */
export function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (at, step) => (at as Record<string | number, unknown> | undefined | null)?.[step],
    value,
  );
}

/** `units.0.battery` as a person would say it: list items by their id where they have one. */
export function spellPath(value: unknown, path: Path): string {
  return path
    .map((step, i) => {
      const item = valueAt(value, path.slice(0, i + 1)) as { id?: unknown } | undefined | null;
      return typeof step === 'number' && typeof item?.id === 'string' ? item.id : String(step);
    })
    .join('.');
}

/** A value as it stands in the file, short. */
export function spellValue(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** Turns every issue into findings, one per unknown key, and the fitting branch of a choice. */
export function schemaFindings(
  issues: readonly Issue[],
  document: LocatedDocument,
  value: unknown,
  base: Path = [],
): Finding[] {
  const mistaken = mistakenForMissing(issues, value, base);
  return issues.flatMap((issue) => {
    const path = [...base, ...(issue.path as (string | number)[])];
    if (issue.code === 'invalid_union' && issue.errors.length > 0) {
      return schemaFindings(fittingBranch(issue.errors, valueAt(value, path)), document, value, path);
    }
    const at = { file: document.file, line: document.lineOf(path) };
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({
        ...at,
        line: document.lineOf([...path, key]),
        path: spellPath(value, [...path, key]),
        found: 'a key that is not known here',
        ...meantWords(key, path, value, mistaken),
      }));
    }
    if (mistaken.has(JSON.stringify(path))) return [];
    const found = valueAt(value, path);
    return [
      {
        ...at,
        path: spellPath(value, path),
        found: spellValue(found),
        expected: expectedOf(issue, String(path.at(-1) ?? '')),
        hint: hintFor(issue, path, found),
      },
    ];
  });
}

/** Paths of missing keys that an unknown key beside them stands for: one slip, told once. */
function mistakenForMissing(issues: readonly Issue[], value: unknown, base: Path): ReadonlySet<string> {
  const missing = issues
    .map((issue) => JSON.stringify([...base, ...issue.path]))
    .filter((path) => valueAt(value, JSON.parse(path) as Path) === undefined);
  const meant = issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') return [];
    const path = [...base, ...(issue.path as (string | number)[])];
    return issue.keys.map((key) =>
      JSON.stringify([...path, meantKey(key, knownKeys(path, valueAt(value, path)))]),
    );
  });
  return new Set(meant.filter((path) => missing.includes(path)));
}

/** Between braces a comma ends a value: `{ latitudeDeg: 42,4 }` has a key 4. */
const DECIMAL_COMMA = 'Was that the rest of a number? Decimals have a point: 42.4, not 42,4.';

/** What to write instead of a key that is not known. */
function meantWords(
  key: string,
  path: Path,
  value: unknown,
  mistaken: ReadonlySet<string>,
): Pick<Finding, 'expected' | 'hint'> {
  const known = knownKeys(path, valueAt(value, path));
  if (/^\d+$/.test(key)) return { expected: 'one of the known keys', hint: DECIMAL_COMMA };
  const meant = meantKey(key, known);
  if (meant === undefined) return { expected: 'one of the known keys', hint: meantHint(key, known) };
  return {
    expected: mistaken.has(JSON.stringify([...path, meant]))
      ? `${meant}, which is missing`
      : 'one of the known keys',
    hint: `Did you mean ${meant}?${unitHint(key, meant)}`,
  };
}

/** Of a choice between shapes, the one that was meant: `typical` marks a typical appliance. */
function fittingBranch(branches: readonly (readonly Issue[])[], value: unknown): readonly Issue[] {
  const typical = typeof value === 'object' && value !== null && 'typical' in value;
  return branches[typical ? branches.length - 1 : 0]!;
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'a block of keys',
  int: 'a whole number',
  record: 'a block of keys',
  tuple: 'a list of two numbers', // every tuple of the schema is one
};

function expectedOf(issue: Issue, key: string): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPE_WORDS[issue.expected] ?? issue.expected;
    case 'too_small':
      if (issue.exact === true) return issue.message;
      return `${sizeWord(issue.origin)} ${issue.inclusive === true ? 'of at least' : 'above'} ${limitWord(issue.minimum, key)}`;
    case 'too_big':
      if (issue.exact === true) return issue.message;
      return `${sizeWord(issue.origin)} ${issue.inclusive === true ? 'of at most' : 'below'} ${String(issue.maximum)}`;
    case 'invalid_value':
      return issue.values.length === 1
        ? spellValue(issue.values[0])
        : `one of ${issue.values.map(spellValue).join(', ')}`;
    case 'invalid_union':
      return optionsOf(issue).length === 0 ? 'a known shape' : `one of ${optionsOf(issue).join(', ')}`;
    default:
      return issue.message;
  }
}

/** A limit as it is thought of: an hour is 1/24 of a day, not 0.041666666666666664. */
function limitWord(limit: number | bigint, key: string): string {
  const parts = Math.round(1 / Number(limit));
  if (String(limit).length < 8 || 1 / parts !== Number(limit)) return String(limit);
  return parts === 24 && key.endsWith('Days') ? '1/24 (an hour)' : `1/${parts}`;
}

function sizeWord(origin: string): string {
  if (origin === 'string') return 'a text with a length';
  if (origin === 'array') return 'a list with a length';
  return 'a number';
}

/** The words that tell the shapes of a choice apart, such as the kinds of appliance. */
function optionsOf(issue: Issue): string[] {
  return issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options)
    ? issue.options.map(String)
    : [];
}

/** The commonest slips: kilowatts where watts are asked for, percent where a fraction is, a word misspelt. */
function hintFor(issue: Issue, path: Path, found: unknown): string | undefined {
  const key = String(path.at(-1) ?? '');
  if (issue.code === 'invalid_value' && typeof found === 'string')
    return meantHint(found, issue.values.map(String));
  if (issue.code === 'too_big' && key.endsWith('Fraction') && typeof found === 'number' && found > 1)
    return percentHint(found);
  if (issue.code === 'invalid_type' && typeof found === 'string') return numberHint(key, found);
  if (issue.code !== 'invalid_union' || optionsOf(issue).length === 0) return undefined;
  if (typeof found === 'string') return meantHint(found, optionsOf(issue));
  return key === 'kind' ? 'Or write typical: and a row of data/appliances.csv.' : undefined;
}

function percentHint(percent: number): string {
  return `For ${percent} percent write ${percent / 100}.`;
}

/** A comma before three digits may part thousands: nobody but the one who wrote it can tell. */
function commaHint(text: string): string | undefined {
  if (!/^-?\d+,\d+$/.test(text)) return undefined;
  if (/,\d{3}$/.test(text))
    return `Write it without a comma: ${text.replace(',', '')}, or ${text.replace(',', '.')}.`;
  return `Write ${text.replace(',', '.')}: decimals have a point.`;
}

/** For a number written as text, `3 kW`, `80 %` or `42,4`. */
function numberHint(key: string, text: string): string | undefined {
  const comma = commaHint(text.trim());
  if (comma !== undefined) return comma;
  const [, digits = '', unit = ''] = /^\s*([\d.]+)\s*(%|kWh?\b)?/i.exec(text) ?? [];
  const value = Number(digits);
  if (digits === '' || Number.isNaN(value)) return undefined;
  if (unit === '%' && key.endsWith('Fraction')) return percentHint(value);
  if (/^k/i.test(unit) && /Wh?$/.test(key))
    return `Write ${value * 1000}: ${key} is in ${key.endsWith('Wh') ? 'watt-hours' : 'watts'}.`;
  return `Write the number alone; the unit is in the key's name.`;
}
