/** What the neutral carries. MODEL.md §5.2. */
import { LEG_V } from './nominal-volts.ts';

/**
 * A, at unity power factor: two legs half a cycle apart leave their difference, two legs fed by one 120 V source are in
 * step and add up.
 */
export function neutralA(firstA: number, secondA: number, inStep: boolean): number {
  return inStep ? firstA + secondA : Math.abs(firstA - secondA);
}

/** The same from the watts of the legs. */
export function neutralOfWattsA(firstW: number, secondW: number, inStep: boolean): number {
  return neutralA(firstW, secondW, inStep) / LEG_V; // it is as many watts at a leg's volts
}
