/** Values of options, read strictly. */
import { availableParallelism } from 'node:os';
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

/** A number above 0. */
export function positiveNumber(name: string): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!Number.isFinite(value) || value <= 0)
      throw new OptionError(`${name}: found ${JSON.stringify(text)}; expected a number above 0`);
    return value;
  };
}

/** `1,7` as [1, 7]. */
export function monthList(text: string): number[] {
  return [...new Set(text.split(',').map((part) => wholeNumber('--months', 1, 12)(part.trim())))];
}

export function everyCore(): number {
  return availableParallelism();
}
