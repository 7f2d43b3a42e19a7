/** How sure a gain is, by the intervals of what the same outages say of it. MODEL.md S7. */
import type { RuntimeGain } from '../trials/compare-runtimes.ts';
import type { Estimate } from '../trials/study-summary.ts';

/**
 * Clear in the days counted, whatever the mean or while that is clearly less; at least on average; or not told at all; or
 * a loss in one of them.
 */
export type Told = 'clear' | 'clear, less on average' | 'on average' | 'not told from zero' | 'a loss';

export function toldOf({ days, meanDays }: RuntimeGain): Told {
  if (isAbove(days)) return isBelow(meanDays) ? 'clear, less on average' : 'clear';
  if (isBelow(days)) return 'a loss';
  return isAbove(meanDays) ? 'on average' : isBelow(meanDays) ? 'a loss' : 'not told from zero';
}

const isAbove = ({ low }: Estimate) => low !== null && low > 0;
const isBelow = ({ high }: Estimate) => high !== null && high < 0;

/** Told from none at all, and for the better. */
export function isGain(told: Told): boolean {
  return isClear(told) || told === 'on average';
}

/** For the better in the days counted. */
export function isClear(told: Told): boolean {
  return told === 'clear' || told === 'clear, less on average';
}
