import { closest, distance } from 'fastest-levenshtein';

/** The word that was probably meant, when one is near enough: at most a third of its letters away. */
export function nearestWord(word: string, words: readonly string[]): string | undefined {
  if (words.length === 0) return undefined;
  const lower = words.map((w) => w.toLowerCase());
  const near = closest(word.toLowerCase(), lower);
  const best = words.find((w) => w.toLowerCase() === near)!;
  return distance(word.toLowerCase(), near) <= Math.max(2, Math.floor(best.length / 3)) ? best : undefined;
}

/** Names put together from the same words in another order, or from some of them: `chest-freezer`, freezer-chest. */
function sharingWords(word: string, words: readonly string[]): string[] {
  const parts = (text: string) =>
    text
      .toLowerCase()
      .split(/[^a-z0-9]+/)
      .filter((part) => part.length > 2);
  const own = parts(word);
  const shared = (name: string) => parts(name).filter((part) => own.includes(part)).length;
  const most = Math.max(1, ...words.map(shared));
  return words.filter((name) => shared(name) === most);
}

/** A hint for a finding: the nearest word, or the whole list when it is short. */
export function meantHint(word: string, words: readonly string[]): string | undefined {
  const near = nearestWord(word, words);
  if (near !== undefined) return `Did you mean ${near}?`;
  const alike = sharingWords(word, words);
  if (alike.length === 1) return `Did you mean ${alike[0]!}?`;
  if (alike.length > 1 && alike.length <= 12) return `There is: ${alike.join(', ')}.`;
  return words.length > 0 && words.length <= 12 ? `There is: ${words.join(', ')}.` : undefined;
}
