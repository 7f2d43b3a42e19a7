/** Names that are broken into lines. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrapped } from '../../packages/notebooks/src/charts/wrapped-text.ts';

/** Ten pixels to a sign. */
const measure = (text: string) => 10 * [...text].length;

describe('wrapped(text, font, widthPx)', () => {
  it('breaks between words, and within a word only where it has to', () => {
    expect(wrapped('frugal → lavish, one in ten', '', 120, measure)).toEqual([
      'frugal →',
      'lavish, one',
      'in ten',
    ]);
    expect(wrapped('a storm-of-the-century', '', 100, measure)).toEqual(['a', 'storm-of-t', 'he-century']);
    expect(wrapped('', '', 100, measure)).toEqual(['']);
  });

  it('loses nothing, and no line is wider than there is room', () => {
    const word = fc
      .string({ minLength: 1, maxLength: 20, unit: 'grapheme' })
      .map((w) => w.replace(/\s/g, 'x'));
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 8 }), (words) => {
        const lines = wrapped(words.join(' '), '', 90, measure);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
        for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(90);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});
