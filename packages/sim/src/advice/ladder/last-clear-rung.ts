import type { LadderRung } from './ladder-answer.ts';

/** Where the ladder is sure to have led: the last rung whose gain is clear in the days counted. */
export function lastClearRung(rungs: readonly LadderRung[]): LadderRung | undefined {
  return rungs.findLast(({ told }) => told === 'clear');
}
