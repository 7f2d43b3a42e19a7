/** A page's link: its words are shared out among the parts of the page, and kept in step with the controls. */

import { handOn, linkText, showOwnPlace } from './page-words.ts';

/** What a part made of the words that are its own. */
export interface TakenWords {
  /** A sentence for each word that it knows and cannot follow. */
  readonly complaints: readonly string[];
  /** Words that this page has no control for. */
  readonly aside?: readonly string[];
}

export interface LinkPart {
  /** The words that it reads and writes. */
  readonly words: readonly string[];
  /** Whatever sends `input` when what it says changes. */
  readonly forms: readonly EventTarget[];
  /** What differs from the usual. */
  readonly say: () => URLSearchParams;
  /** Sets its controls; what the link does not say is as usual. */
  readonly take: (said: URLSearchParams) => TakenWords;
}

/** Follows the address bar from the moment it is made, and sends `input` when that was changed by hand. */
export class PageLink extends EventTarget {
  /** What the link asked for and this page cannot do, a sentence each. */
  complaints: readonly string[] = [];
  readonly #parts: readonly LinkPart[];

  constructor(parts: readonly LinkPart[]) {
    super();
    this.#parts = parts;
    this.#read();
    showOwnPlace();
    for (const form of parts.flatMap((part) => part.forms))
      form.addEventListener('input', () => this.#write());
    addEventListener('hashchange', () => {
      const refused = this.#read();
      if (refused) return location.reload(); // some choices are offered only to a page opened with them
      for (const form of parts.flatMap((part) => part.forms)) form.dispatchEvent(new CustomEvent('input'));
      this.dispatchEvent(new CustomEvent('input'));
    });
  }

  /** True when a part has no such choice at present. */
  #read(): boolean {
    const said = saidIn(location.hash);
    const taken = this.#parts.map((part) => part.take(said));
    handOn(said);
    const known = new Set(this.#parts.flatMap((part) => part.words));
    const strange = [...said.keys()].filter((word) => !known.has(word));
    const aside = [...taken.flatMap((part) => part.aside ?? []), ...strange];
    this.complaints = [...taken.flatMap((part) => part.complaints), ...asideSentence(aside, said)];
    return taken.some((part) => (part.aside ?? []).length > 0);
  }

  #write(): void {
    const said = new URLSearchParams(this.#parts.flatMap((part) => [...part.say()]));
    history.replaceState(null, '', `#${linkText(said)}`);
    handOn(said);
  }
}

/** The words of a link; the name of a place on the page ("#survival-curves") is none. */
export function saidIn(hash: string): URLSearchParams {
  const text = hash.replace(/^#/, '');
  return new URLSearchParams(text.includes('=') ? text : '');
}

/** A word of the link as it is read aloud: “months = “7””. */
export function wordSaid(word: string, text: string | null): string {
  return `${word.slice(0, 60)} = “${(text ?? '').slice(0, 60)}”`;
}

/** All in one plain line. */
function asideSentence(words: readonly string[], said: URLSearchParams): string[] {
  const named = [...new Set(words)].slice(0, 8).map((word) => wordSaid(word, said.get(word)));
  if (named.length === 0) return [];
  const them = named.length === 1 ? 'it is' : 'they are';
  return [`The link says ${named.join(', ')}: this page has no such setting, and ${them} left aside.`];
}

/** Reads words of a link: the usual value where one is not said, and a complaint where it is of no use. */
export function wordReader(said: URLSearchParams, complaints: string[]) {
  return <T>(word: string, usual: T, parse: (text: string) => T | undefined, expected: string): T => {
    const text = said.get(word);
    if (text === null) return usual;
    const value = parse(text);
    if (value === undefined)
      complaints.push(
        `The link says ${wordSaid(word, text)}; this page takes ${expected}. The usual setting is used.`,
      );
    return value ?? usual;
  };
}
