/** What the neutral carries. MODEL.md §5.2. */

/**
 * A, at unity power factor: two legs half a cycle apart leave their difference, two legs fed by one 120 V source are in
 * step and add up.
 */
export function neutralA(firstA: number, secondA: number, inStep: boolean): number {
  return inStep ? firstA + secondA : Math.abs(firstA - secondA);
}
