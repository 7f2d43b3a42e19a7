/** What differs between two households, as an alternative writes it: path to new value. */
import { sameValue } from './house-schema.ts';

type Changes = Record<string, unknown>;

/** Applied to `before`, they give `after`. List items are named by id, by position, or `*` when all change alike. */
export function changesBetween(before: object, after: object): Changes {
  const changes: Changes = {};
  for (const [key, value] of Object.entries(after)) {
    const old = (before as Changes)[key];
    const within = changesWithin(old, value);
    if (within === 'whole') changes[key] = value;
    else for (const [path, part] of Object.entries(within)) changes[`${key}.${path}`] = part;
  }
  return changes;
}

/** 'whole': it cannot be said in parts, as something was taken away or is of another shape. */
function changesWithin(before: unknown, after: unknown): Changes | 'whole' {
  if (sameValue(before, after)) return {};
  if (Array.isArray(before) && Array.isArray(after)) return changesInList(before, after);
  if (!isBlock(before) || !isBlock(after)) return 'whole';
  const removed = Object.keys(before).some((key) => before[key] !== undefined && after[key] === undefined);
  return removed ? 'whole' : changesBetween(before, after);
}

function changesInList(before: readonly unknown[], after: readonly unknown[]): Changes | 'whole' {
  const sameItems =
    before.length === after.length && before.every((b, i) => nameOf(b, i) === nameOf(after[i], i));
  if (!sameItems) return 'whole';
  const each = before.map((b, i) => changesWithin(b, after[i]));
  if (each.some((changes) => changes === 'whole')) return 'whole';
  const alike = each.length > 1 && each.every((changes) => sameValue(changes, each[0]));
  const named = alike
    ? [['*', each[0]!] as const]
    : each.map((changes, i) => [nameOf(before[i], i), changes] as const);
  return Object.fromEntries(
    named.flatMap(([name, changes]) =>
      Object.entries(changes).map(([path, value]) => [`${name}.${path}`, value]),
    ),
  );
}

function nameOf(item: unknown, index: number): string {
  return isBlock(item) && typeof item['id'] === 'string' ? item['id'] : String(index);
}

function isBlock(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
