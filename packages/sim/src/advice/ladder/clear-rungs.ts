import { isClear } from '../told.ts';
import type { LadderRung } from './ladder-answer.ts';

/** The ladder as far as it is sure to lead: up to the last rung whose gain is clear in the days counted. */
export function clearRungs(rungs: readonly LadderRung[]): readonly LadderRung[] {
  return rungs.slice(0, rungs.findLastIndex(({ told }) => isClear(told)) + 1);
}
