import type { Scenario } from '../../packages/sim/src/index.ts';
import type { Effort } from './effort.ts';
import type { Yardstick } from './yardstick.ts';

/** What every measurement is given. */
export interface Session {
  /** The full demo household. */
  readonly demo: Scenario;
  readonly effort: Effort;
  readonly yardstick: Yardstick | undefined;
  readonly signal: AbortSignal;
}

/** Every figure is about these draws. */
export const SEED = 'bench';

/** The draws that make up one figure: always the same ones, so that samples of each are alike. */
export function drawNumbers(count: number): number[] {
  return Array.from({ length: count }, (_, draw) => draw);
}
