import { dsvFormat } from 'd3-dsv';
import type { ProfileFinding } from './profile-file-error.ts';

/** Where a profile's two columns are, and how its lines fall into cells. */
export interface ProfileColumns {
  readonly time: number;
  readonly watts: number;
  /** How many columns the header names. */
  readonly count: number;
  readonly cellsOf: (text: string) => string[];
}

const TIME_WORDS = ['time', 'timestamp', 'datetime', 'date', 'minute', 'minutes', 'clock'];
const WATT_WORDS = ['w', 'watt', 'watts'];
const KILOWATT_WORDS = ['kw', 'kilowatt', 'kilowatts'];

/** Reads the header; undefined after noting what is missing. */
export function profileColumns(
  header: { readonly line: number; readonly text: string },
  findings: ProfileFinding[],
): ProfileColumns | undefined {
  const separator = ['\t', ';', ','].find((s) => header.text.includes(s)) ?? ',';
  const cellsOf = cellsBetween(separator);
  const titles = cellsOf(header.text);
  const withWords = (words: readonly string[]) =>
    titles.flatMap((title, index) => (wordsOf(title).some((word) => words.includes(word)) ? [index] : []));
  const note = (text: string) => findings.push({ line: header.line, text });
  const times = withWords(TIME_WORDS);
  const watts = withWords(WATT_WORDS);
  const found = `found ${titles.map((title) => `"${title}"`).join(', ')}`;
  if (times.length === 0) note(`no time column; expected one named time, date or minutes; ${found}`);
  if (watts.length === 0) note(noWatts(titles, withWords(KILOWATT_WORDS), found));
  if (watts.length > 1) note(`${watts.length} columns could be the watts; leave one; ${found}`);
  return findings.length > 0
    ? undefined
    : { time: times[0]!, watts: watts[0]!, count: titles.length, cellsOf };
}

function noWatts(titles: readonly string[], kilowatts: readonly number[], found: string): string {
  if (kilowatts.length > 0) {
    return `column "${titles[kilowatts[0]!]!}" is in kilowatts; expected watts: multiply its values by 1000 and name it watts`;
  }
  return `no watts column; expected one named watts or W; ${found}`;
}

/** Of one line: what stands in quotes is one cell, whatever it holds. */
function cellsBetween(separator: string): (text: string) => string[] {
  const format = dsvFormat(separator);
  return (text) => (format.parseRows(text)[0] ?? []).map((cell) => cleaned(cell, separator));
}

/** Where commas do not part columns they are decimal commas. */
function cleaned(cell: string, separator: string): string {
  const bare = cell
    .trim()
    .replace(/^"(.*)"$/, '$1') // quotes behind a blank
    .trim();
  return separator !== ',' && /^-?\d+,\d+$/.test(bare) ? bare.replace(',', '.') : bare;
}

/** "power_W", "Power (W)" and "powerW" all hold the word "w". */
function wordsOf(title: string): string[] {
  return title
    .replace(/kW/g, 'KW') // one word, not "k" and "W"
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/);
}
