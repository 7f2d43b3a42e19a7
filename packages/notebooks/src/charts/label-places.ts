/** Where to write the name of each falling curve, so that it touches as few other curves and names as may be. */

/** One curve in picture coordinates (y grows downward); x and y never fall. */
export interface PixelCurve {
  readonly text: string;
  readonly textWidth: number;
  readonly points: readonly (readonly [x: number, y: number])[];
}
export interface LabelPlace {
  readonly text: string;
  /** Where the text begins, and its middle line. */
  readonly x: number;
  readonly y: number;
}
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const HALF_LINE = 9;
const GAP = 9;
const STEP = 12;

/**
 * One place per curve, in the order given, each inside a picture of `width` × `height` px.
 * Greedy: every curve takes the cheapest place left by those before it.
 */
export function labelPlaces(
  curves: readonly PixelCurve[],
  { width, height }: { width: number; height: number },
): readonly LabelPlace[] {
  const taken: Box[] = [];
  return curves.map((curve) => {
    const wide = curve.textWidth;
    let best: Box = { left: width - wide, right: width, top: 0, bottom: 2 * HALF_LINE };
    let least = Infinity;
    for (const box of boxesAlong(curve)) {
      if (box.left < 2 || box.right > width || box.top < 0 || box.bottom > height - 2) continue;
      const cost =
        curves.filter(({ points }) => crosses(points, box)).length +
        20 * taken.filter((t) => overlap(t, box)).length;
      if (cost < least) [least, best] = [cost, box];
    }
    taken.push(best);
    return { text: curve.text, x: best.left, y: (best.top + best.bottom) / 2 };
  });
}

/** Places beside the curve, from its middle outwards: to the right, above, to the left, below. */
function boxesAlong({ points, textWidth: wide }: PixelCurve): Box[] {
  const [first, last] = [points[0]![0], points[points.length - 1]![0]];
  const middle = (first + last) / 2;
  const boxes: Box[] = [];
  for (let away = 0; away <= (last - first) / 2; away += STEP) {
    for (const x of [middle + away, middle - away]) {
      const y = heightAt(points, x);
      boxes.push(boxAt(x + GAP, y, wide), boxAt(x - wide / 2, y - HALF_LINE - 5, wide));
      boxes.push(boxAt(x - GAP - wide, y, wide), boxAt(x - wide / 2, y + HALF_LINE + 5, wide));
    }
  }
  return boxes;
}

function boxAt(left: number, y: number, wide: number): Box {
  return { left, right: left + wide, top: y - HALF_LINE, bottom: y + HALF_LINE };
}

/** Height of the curve at x: that of the last point at or before it. */
function heightAt(points: PixelCurve['points'], x: number): number {
  let y = points[0]![1];
  for (const point of points) {
    if (point[0] > x) break;
    y = point[1];
  }
  return y;
}

function crosses(points: PixelCurve['points'], { left, right, top, bottom }: Box): boolean {
  if (points[points.length - 1]![0] < left || points[0]![0] > right) return false;
  return heightAt(points, left) < bottom && heightAt(points, right) > top;
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
