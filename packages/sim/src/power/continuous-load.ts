/** Loads that stay at their most for hours. MODEL.md §23. */

/** NEC Article 100: continuous is what stays at its most for three hours or more. */
export const CONTINUOUS_MINUTES = 180;
/** NEC 210.19(A), 210.20(A), 215.2(A), 215.3: 125 %. */
const CONTINUOUS_FACTOR = 1.25;
/** The same read the other way, the 80 % rule: what a breaker carries of its rating for three hours and more. */
export const CONTINUOUS_SHARE = 1 / CONTINUOUS_FACTOR;

/** Least rating of the breaker and of the wire, A: 125 % of the continuous load and 100 % of the rest. */
export function leastRatingA(continuousA: number, otherA = 0): number {
  return CONTINUOUS_FACTOR * continuousA + otherA;
}
