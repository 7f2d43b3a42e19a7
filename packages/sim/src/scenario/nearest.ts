import { closest, distance } from 'fastest-levenshtein';

/** The word that was probably meant, when one is near enough: at most a third of its letters away. */
export function nearestWord(word: string, words: readonly string[]): string | undefined {
  if (words.length === 0) return undefined;
  const lower = words.map((w) => w.toLowerCase());
  const near = closest(word.toLowerCase(), lower);
  const best = words.find((w) => w.toLowerCase() === near)!;
  return distance(word.toLowerCase(), near) <= Math.max(2, Math.floor(best.length / 3)) ? best : undefined;
}

/** A hint for a finding: the nearest word, or the whole list when it is short. */
export function meantHint(word: string, words: readonly string[]): string | undefined {
  const near = nearestWord(word, words);
  if (near !== undefined) return `Did you mean ${near}?`;
  return words.length > 0 && words.length <= 12 ? `There is: ${words.join(', ')}.` : undefined;
}
