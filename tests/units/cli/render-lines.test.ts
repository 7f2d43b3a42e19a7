import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { paragraph, toLeft, toRight, wrapLines } from '../../../packages/sim/src/cli/render-lines.ts';

describe('wrapLines', () => {
  it('never runs past the width and loses no word', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1, maxLength: 30 }).filter((w) => !w.includes(' '))),
        fc.integer({ min: 1, max: 40 }),
        (words, width) => {
          const lines = wrapLines(words.join(' '), width);
          expect(lines.every((line) => Array.from(line).length <= width)).toBe(true);
          expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
        },
      ),
    );
  });
  it('keeps no-break spaces together', () =>
    expect(wrapLines('at least 2.4\u00a0days', 10)).toEqual(['at least', '2.4\u00a0days']));
});

describe('paragraph', () => {
  it('hangs the later lines under the first', () =>
    expect(paragraph('one two three', 9, '- ')).toEqual(['- one two', '  three']));
});

it('toLeft and toRight fill up to the width and never cut', () => {
  expect([toLeft('ab', 4), toRight('ab', 4), toLeft('abcde', 4)]).toEqual(['ab  ', '  ab', 'abcde']);
});
