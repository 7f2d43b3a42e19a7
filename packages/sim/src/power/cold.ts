/** What cold does to a bank. MODEL.md §7.4. */
import type { UnitSpec } from '../scenario/schema.ts';

/** Fraction of the capacity that can be drawn at `temperatureC`: linear between the given points, flat outside. */
export function drawableFraction(points: UnitSpec['battery']['coldCapacity'], temperatureC: number): number {
  const first = points[0]!;
  if (temperatureC <= first[0]) return first[1];
  for (let i = 1; i < points.length; i++) {
    const cold = points[i - 1]!;
    const warm = points[i]!;
    if (temperatureC <= warm[0])
      return cold[1] + ((warm[1] - cold[1]) * (temperatureC - cold[0])) / (warm[0] - cold[0]);
  }
  return points[points.length - 1]![1];
}

/**
 * Fraction of the capacity at which the unit stops: the cut-off share of what can be drawn, on top of what the cold
 * holds back. Cold hides energy, it does not destroy it: the hidden part is there again once the bank warms up.
 */
export function floorFraction(cutOffFraction: number, drawable: number): number {
  return 1 - drawable + cutOffFraction * drawable;
}
