/** Names at the curves: inside the picture, and not on each other. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labelPlaces, type PixelCurve } from '../../packages/notebooks/src/charts/label-places.ts';

const WIDTH = 800;
const HEIGHT = 360;
const LINE = 18;

/** Falling curves that last 20 to 100 % of the picture's width. */
const curve = fc
  .record({
    lasts: fc.double({ min: 0.2, max: 1, noNaN: true }),
    textWidth: fc.integer({ min: 8, max: 220 }),
  })
  .map(({ lasts, textWidth }): PixelCurve => ({
    text: 'name',
    textWidth,
    points: Array.from({ length: 41 }, (_, i) => [(i / 40) * lasts * WIDTH, (i / 40) * HEIGHT] as const),
  }));

describe('labelPlaces(curves, picture)', () => {
  it('puts every name inside the picture, and no two of up to six on each other', () => {
    fc.assert(
      fc.property(fc.array(curve, { minLength: 1, maxLength: 6 }), (curves) => {
        const places = labelPlaces(curves, { width: WIDTH, height: HEIGHT });
        const boxes = places.map(({ x, y }, i) => ({
          left: x,
          right: x + curves[i]!.textWidth,
          top: y - LINE / 2,
          bottom: y + LINE / 2,
        }));
        for (const [i, box] of boxes.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(WIDTH + 1e-9);
          expect(box.top).toBeGreaterThanOrEqual(0);
          expect(box.bottom).toBeLessThanOrEqual(HEIGHT);
          for (const other of boxes.slice(0, i)) {
            const apart =
              box.right <= other.left ||
              other.right <= box.left ||
              box.bottom <= other.top ||
              other.bottom <= box.top;
            expect(apart).toBe(true);
          }
        }
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('sets a lone name beside its curve, not across it', () => {
    const points = [
      [0, 0],
      [400, 0],
      [400, 360],
    ] as const;
    const [place] = labelPlaces([{ text: 'name', textWidth: 60, points }], { width: WIDTH, height: HEIGHT });
    expect(place!.y).not.toBe(0);
  });
});
