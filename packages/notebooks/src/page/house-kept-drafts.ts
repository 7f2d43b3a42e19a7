/**
 * Drafts of a household, kept by the browser while they are not saved to a file. Each opening of the page keeps one of
 * its own, so that two windows, or a slip of the hand, never write over what is kept already. What is found there may
 * be anything: every page that is opened as a file can write to the same store.
 */
import type { ScenarioSpec } from '@rideout/sim';
import { hasShapeOf, wholeSchema } from './house-schema.ts';

/** What of a browser's store is used; any of it may throw. */
export type DraftStore = Pick<Storage, 'length' | 'key' | 'getItem' | 'setItem' | 'removeItem'>;

/** As found: a household, or why it is none. */
export interface KeptDraft {
  readonly key: string;
  /** Milliseconds since 1970, as the browser's clock told when it was last changed. */
  readonly changedAt: number;
  readonly spec: ScenarioSpec | undefined;
}

const PREFIX = 'rideout-draft/';
const MOST_DRAFTS = 3; // of one household; older ones make room
const MOST_SIGNS = 300_000; // some ten times a large household

/** The browser's own; undefined where it gives none to a page. */
export function browserStore(): DraftStore | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined; // blocked for files, or altogether
  }
}

export class KeptDrafts {
  readonly #store: DraftStore | undefined;
  readonly #prefix: string;
  readonly #ownKey: string;

  /** @param household what tells the page's household from others @param openedAt milliseconds since 1970 */
  constructor(store: DraftStore | undefined, household: string, openedAt: number) {
    this.#store = store;
    this.#prefix = `${PREFIX}${household}/`;
    this.#ownKey = `${this.#prefix}${openedAt}`;
  }

  /** True where it is kept now. */
  keep(spec: ScenarioSpec, changedAt: number): boolean {
    try {
      const text = JSON.stringify({ changedAt, spec });
      if (!this.#store || text.length > MOST_SIGNS) return false; // it would not be read back
      this.#store.setItem(this.#ownKey, text);
      return true;
    } catch {
      return false; // full, or forbidden
    }
  }

  /** There is nothing left that is not in a file. */
  forgetOwn(): void {
    this.forget(this.#ownKey);
  }

  forget(key: string): void {
    try {
      this.#store?.removeItem(key);
    } catch {
      return;
    }
  }

  /** Those of other openings of the page, newest first; too many make room. */
  others(): KeptDraft[] {
    try {
      const drafts = this.#keys().map((key) => readDraft(key, this.#store!.getItem(key) ?? ''));
      drafts.sort((a, b) => b.changedAt - a.changedAt);
      for (const { key } of drafts.slice(MOST_DRAFTS)) this.forget(key);
      return drafts.slice(0, MOST_DRAFTS);
    } catch {
      return [];
    }
  }

  #keys(): string[] {
    const store = this.#store;
    const keys = Array.from({ length: store?.length ?? 0 }, (_, i) => store!.key(i) ?? '');
    return keys.filter((key) => key.startsWith(this.#prefix) && key !== this.#ownKey);
  }
}

function readDraft(key: string, text: string): KeptDraft {
  const none = { key, changedAt: 0, spec: undefined };
  if (text.length > MOST_SIGNS) return none;
  try {
    const { changedAt, spec } = JSON.parse(text) as { changedAt?: unknown; spec?: unknown };
    if (typeof changedAt !== 'number' || !(Math.abs(changedAt) < 8e15)) return none;
    // Faults of a household half described are told in the form; what has not the shape of one has no form.
    return hasShapeOf(spec, wholeSchema())
      ? { key, changedAt, spec: spec as ScenarioSpec }
      : { ...none, changedAt };
  } catch {
    return none;
  }
}
