/** The household while it is being described: what will stand in the file, and who is told when it changes. */
import { valueAt, type ScenarioSpec } from '@rideout/sim';
import type { NamedFiles, WrittenHouse } from './house-from-scenario.ts';
import type { Path } from './house-schema.ts';
import { slug } from './slug.ts';

/** 'value': a field was filled in. 'shape': something was added, taken away or opened, and the form must follow. */
export type Change = 'value' | 'shape';

type Block = Record<string | number, unknown>;

export class HouseDraft {
  #spec: ScenarioSpec;
  readonly files: NamedFiles;
  /** What a change of several parts has done, as long as the form stands as it left it. */
  note = '';
  readonly #listeners: ((change: Change, at: Path | undefined) => void)[] = [];

  constructor({ spec, files }: WrittenHouse) {
    this.#spec = spec;
    this.files = files;
  }

  /** As it would be written. Change it through this class only. */
  get spec(): ScenarioSpec {
    return this.#spec;
  }

  /** `at`: what was added or opened; or the place in a list where something was taken away. */
  onChange(listener: (change: Change, at: Path | undefined) => void): void {
    this.#listeners.push(listener);
  }

  at(path: Path): unknown {
    return valueAt(this.#spec, path);
  }

  /** `undefined` takes the key away: its usual value holds. Blocks on the way are made. */
  set(path: Path, value: unknown, change: Change = 'value'): void {
    const key = path.at(-1)!;
    let block = this.#spec as unknown as Block;
    for (const step of path.slice(0, -1)) block = (block[step] ??= {}) as Block;
    if (value === undefined && !Array.isArray(block)) delete block[key];
    else block[key] = value;
    this.#tell(change, path);
  }

  add(path: Path, item: unknown): void {
    const list = (this.at(path) as unknown[] | undefined) ?? [];
    this.set(path, [...list, structuredClone(item)]);
    this.#tell('shape', [...path, list.length]);
  }

  remove(path: Path): void {
    const list = this.at(path.slice(0, -1)) as unknown[];
    list.splice(path.at(-1) as number, 1);
    this.#tell('shape', path);
  }

  replace(spec: ScenarioSpec, { at, note = '' }: { at?: Path; note?: string } = {}): void {
    this.#spec = spec;
    this.#tell('shape', at, note);
  }

  /** Files were given, the household itself is as before. */
  filesGiven(): void {
    this.#tell('shape');
  }

  #tell(change: Change, at?: Path, note = ''): void {
    if (change === 'shape') this.note = note;
    for (const listener of this.#listeners) listener(change, at);
  }
}

/** A name not yet used in the list, from a title. */
export function freshId(title: string, list: readonly { readonly id: string }[]): string {
  const stem = slug(title) || 'item';
  const taken = new Set(list.map(({ id }) => id));
  if (!taken.has(stem)) return stem;
  for (let n = 2; ; n++) if (!taken.has(`${stem}-${n}`)) return `${stem}-${n}`;
}
