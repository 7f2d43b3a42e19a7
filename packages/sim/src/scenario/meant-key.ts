/** Which key was meant by one that is not known: the same name with another unit comes before a name spelt alike. */
import { nearestWord } from './nearest.ts';

/** Units at the end of keys, as the schema or a person may write them. */
const UNIT_SUFFIX =
  /(?:Watts?|[KkMm]?W[Hh]|[Kk]?W|m?Ah|A|[Kk]?V|Minutes?|Mins?|Hours?|Days?|Fraction|Percent|Pct|Deg|Degrees|C|F|Kg|Gal|L|Ft|Km|M|Ms)$/;

/** @returns the key, undefined when none is near enough */
export function meantKey(word: string, keys: readonly string[]): string | undefined {
  const stem = stemOf(word);
  const sameStem = stem === '' ? [] : keys.filter((key) => UNIT_SUFFIX.test(key) && stemOf(key) === stem);
  return sameStem.length === 1 ? sameStem[0] : nearestWord(word, keys);
}

function stemOf(key: string): string {
  return key.replace(UNIT_SUFFIX, '').toLowerCase();
}

/** How to write the value for `key`, where `word` names another unit; empty where it does not, or we cannot say. */
export function unitHint(word: string, key: string): string {
  if (/Wh$/.test(key) && /k_?wh$/i.test(word)) return ' It is in watt-hours: times 1000.';
  if (/W$/.test(key) && /k_?w$/i.test(word)) return ' It is in watts: times 1000.';
  if (/Fraction$/.test(key) && /(?:percent|pct)$/i.test(word))
    return ' It is a fraction: 80 percent are 0.8.';
  return '';
}
