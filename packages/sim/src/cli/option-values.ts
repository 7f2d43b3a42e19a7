/** Values of options, read strictly. */
import { availableParallelism } from 'node:os';
import { meantHint } from '../scenario/nearest.ts';
import { OptionError } from './report-error.ts';

/** A whole number in [least, most]. */
export function wholeNumber(name: string, least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!Number.isInteger(value) || value < least || value > most || text.trim() === '') {
      throw new OptionError(
        `${name}: found ${JSON.stringify(text)}; expected a whole number from ${least} to ${most}`,
      );
    }
    return value;
  };
}

/** A number in [least, most]. */
export function numberWithin(name: string, least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!Number.isFinite(value) || value < least || value > most || text.trim() === '') {
      const range = most === Infinity ? `of at least ${least}` : `from ${least} to ${most}`;
      throw new OptionError(`${name}: found ${JSON.stringify(text)}; expected a number ${range}`);
    }
    return value;
  };
}

/** A number above 0. */
export function positiveNumber(name: string): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!Number.isFinite(value) || value <= 0)
      throw new OptionError(`${name}: found ${JSON.stringify(text)}; expected a number above 0`);
    return value;
  };
}

/** A text that says something: an empty one names no file, and no seed that could be cited. */
export function someText(name: string, what: string): (text: string) => string {
  return (text) => {
    if (text.trim() === '') throw new OptionError(`${name}: found ${JSON.stringify(text)}; expected ${what}`);
    return text;
  };
}

/** One of some words. */
export function oneOf<Word extends string>(name: string, words: readonly Word[]): (text: string) => Word {
  return (text) => {
    const word = words.find((w) => w === text);
    if (word === undefined)
      throw new OptionError(
        `${name}: found ${JSON.stringify(text)}; expected one of ${words.join(', ')}. ${meantHint(text, words) ?? ''}`.trimEnd(),
      );
    return word;
  };
}

/** `3,8.5` as [3, 8.5]; each above 0. */
export function numberList(name: string): (text: string) => number[] {
  return (text) => text.split(',').map((part) => positiveNumber(name)(part.trim()));
}

/** `1,7` as [1, 7]. */
export function monthList(text: string): number[] {
  return [...new Set(text.split(',').map((part) => wholeNumber('--months', 1, 12)(part.trim())))];
}

export function everyCore(): number {
  return availableParallelism();
}
