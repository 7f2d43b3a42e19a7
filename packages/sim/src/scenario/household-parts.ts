/** Parts of a household by path: where they are, and the household without them. Paths as in alternatives. */
import { chooseItems, idOf } from './changes.ts';
import type { Path } from './located-document.ts';

type Block = Record<string, unknown>;

/** Every place that a path such as `units.*.solar` means: keys and positions. Empty when nothing is there. */
export function placesAt(value: unknown, spelt: string): Path[] {
  return spelt
    .split('.')
    .reduce<Path[]>((places, step) => places.flatMap((at) => below(value, at, step)), [[]]);
}

function below(value: unknown, at: Path, step: string): Path[] {
  const block = partAt(value, at);
  if (Array.isArray(block)) return chooseItems(block, step).map((i) => [...at, i]);
  return typeof block === 'object' && block !== null && Object.hasOwn(block, step) ? [[...at, step]] : [];
}

/** What stands at a place; undefined when nothing does. */
export function partAt(value: unknown, at: Path): unknown {
  return at.reduce<unknown>((block, step) => (block as Block | undefined)?.[step], value);
}

/** The same paths with `*` and positions told by id, each place once. */
export function spelledOut(value: unknown, paths: readonly string[]): string[] {
  const spelt = paths.flatMap((path) =>
    placesAt(value, path).map((at) =>
      at
        .map((step, i) => (typeof step === 'number' ? idOf(partAt(value, at.slice(0, i + 1)), step) : step))
        .join('.'),
    ),
  );
  return [...new Set(spelt)];
}

/** A deep copy without the parts at the given paths. */
export function withoutParts<T>(value: T, paths: readonly string[]): T {
  const copy = structuredClone(value);
  for (const path of paths) {
    for (const at of placesAt(copy, path).reverse()) {
      const around = partAt(copy, at.slice(0, -1));
      const last = at.at(-1)!;
      if (Array.isArray(around)) around.splice(Number(last), 1);
      else delete (around as Block)[last];
    }
  }
  return copy;
}

/**
 * Puts `next(present)` at every place that the path means; a last key that is not there yet is made, and so is a part
 * of the household of which there is nothing yet (`sources`).
 */
export function changeAt(value: unknown, path: string, next: (present: unknown) => unknown): void {
  const steps = path.split('.');
  const [first] = steps;
  const last = steps.at(-1)!;
  if (steps.length === 2) (value as Block)[first!] ??= {};
  for (const at of steps.length === 1 ? [[]] : placesAt(value, steps.slice(0, -1).join('.'))) {
    const around = partAt(value, at) as Block | unknown[] | undefined;
    if (around === undefined) continue;
    if (Array.isArray(around)) for (const i of chooseItems(around, last)) around[i] = next(around[i]);
    else around[last] = next(around[last]);
  }
}
