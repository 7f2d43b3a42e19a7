/** Alternatives: the same household with something changed, written as path and new value. */
import type { LocatedDocument, Path } from './located-document.ts';
import type { Finding } from './findings.ts';
import { meantHint } from './nearest.ts';

/** What an alternative may change: the household, not the weather it meets. */
const CHANGEABLE = ['units', 'pair', 'sources', 'circuits', 'usage', 'person', 'strategies'];

type Block = Record<string, unknown>;

/** A deep copy of `value` with the changes made. Findings point at the change's own line. */
export function applyChanges(
  value: unknown,
  change: Readonly<Record<string, unknown>>,
  document: LocatedDocument,
  at: Path,
  findings: Finding[],
): unknown {
  const copy = structuredClone(value) as Block;
  for (const [spelt, newValue] of Object.entries(change)) {
    const steps = spelt.split('.');
    const fault = CHANGEABLE.includes(steps[0]!)
      ? setAt(copy, steps, newValue)
      : {
          found: `a change of ${JSON.stringify(steps[0])}`,
          expected: `a path into ${CHANGEABLE.join(', ')}: every alternative meets the same weather`,
          hint: undefined,
        };
    if (fault !== undefined) {
      findings.push({ file: document.file, line: document.lineOf([...at, spelt]), path: spelt, ...fault });
    }
  }
  return copy;
}

type Fault = Pick<Finding, 'found' | 'expected' | 'hint'>;

/** Sets the value at a path whose list steps are ids, numbers from 0, or `*` for all. */
function setAt(block: unknown, steps: readonly string[], newValue: unknown): Fault | undefined {
  const [step = '', ...rest] = steps;
  if (Array.isArray(block)) {
    const chosen = chooseItems(block, step);
    if (chosen.length === 0) return nothingNamed(step, block.map(idOf));
    if (rest.length === 0) {
      for (const i of chosen) block[i] = structuredClone(newValue);
      return undefined;
    }
    return chosen.map((i) => setAt(block[i], rest, newValue)).find((fault) => fault !== undefined);
  }
  // `__proto__` and an empty step name no key that a file could mean.
  if (typeof block !== 'object' || block === null || step === '' || step === '__proto__')
    return nothingNamed(step, []);
  if (rest.length === 0) {
    (block as Block)[step] = structuredClone(newValue);
    return undefined;
  }
  const inner = Object.hasOwn(block, step) ? (block as Block)[step] : undefined;
  if (inner === undefined) {
    (block as Block)[step] = {};
    return setAt((block as Block)[step], rest, newValue);
  }
  return setAt(inner, rest, newValue);
}

export function idOf(item: unknown, index: number): string {
  const id = (item as { id?: unknown } | null)?.id;
  return typeof id === 'string' ? id : String(index);
}

/** Positions of the items that a step of a path means: an id, a position from 0, or `*`. */
export function chooseItems(items: readonly unknown[], step: string): number[] {
  return items.flatMap((item, i) => (step === '*' || idOf(item, i) === step || String(i) === step ? i : []));
}

export function nothingNamed(step: string, there: readonly string[]): Fault {
  return {
    found: `nothing named ${JSON.stringify(step)} there`,
    expected: 'the id of an item in the list, its position from 0, or *',
    hint: meantHint(step, there),
  };
}
