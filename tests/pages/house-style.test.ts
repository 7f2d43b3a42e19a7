/** Contrast of the house style's colours, from the style sheet itself. WCAG 2.2: 1.4.3 text 4.5:1, 1.4.11 graphics 3:1. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seriesStyle } from '../../packages/notebooks/src/charts/series-style.ts';
import { fileOf } from './houses.ts';

const css = readFileSync(fileOf('../../packages/notebooks/src/style/house-style.css'), 'utf8');

function colours(block: string): Record<string, string> {
  return Object.fromEntries([...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]));
}
const [lightBlock, rest] = css.split('@media screen and (prefers-color-scheme: dark)');
const light = colours(lightBlock!);
const dark = colours(rest!.slice(0, rest!.indexOf('\n}\n')));

/** Relative luminance, WCAG 2.2, "relative luminance". */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high! + 0.05) / (low! + 0.05);
}

describe('the house style', () => {
  const text = ['ink', 'ink-soft', 'accent', 'caution', ...[1, 2, 3, 4, 5, 6].map((i) => `series-${i}`)];

  it('has the same colours named in light and in dark', () => {
    expect(Object.keys(dark).sort()).toEqual(Object.keys(light).sort());
    expect(Object.keys(light).length).toBeGreaterThan(14);
  });

  for (const [name, set] of Object.entries({ light, dark })) {
    it(`keeps text and series at 4.5:1 or more, edges at 3:1 or more (${name})`, () => {
      for (const colour of text) {
        for (const ground of ['paper', 'sheet'])
          expect(contrast(set[colour]!, set[ground]!), `${colour} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(set['caution']!, set['caution-sheet']!)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(set['ink']!, set['caution-sheet']!)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(set['edge']!, set['paper']!)).toBeGreaterThanOrEqual(3);
    });
  }

  it('tells series apart without colour: neighbours differ in dash and marker, and thirty looks are distinct', () => {
    const looks = Array.from({ length: 30 }, (_, i) => seriesStyle(i));
    for (let i = 1; i < looks.length; i++) {
      expect(looks[i]!.dash).not.toEqual(looks[i - 1]!.dash);
      expect(looks[i]!.marker).not.toBe(looks[i - 1]!.marker);
    }
    expect(new Set(looks.map((look) => JSON.stringify([look.colour, look.dash, look.marker]))).size).toBe(30);
  });
});
