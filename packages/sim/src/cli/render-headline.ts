import { longestLasting } from '../trials/longest-lasting.ts';
import type { StrategySummary, StudySummary } from '../trials/study-summary.ts';
import { atLeastThisLong, daysInterval } from '../trials/days-in-words.ts';
import { byAlternative } from './by-alternative.ts';

/** The answer in a sentence or two per alternative: how long its longest-lasting strategy holds. */
export function headlineSentences(summary: StudySummary): string[] {
  const alternatives = byAlternative(summary.strategies);
  return alternatives.map((strategies) => {
    const best = longestLasting(strategies);
    const where = alternatives.length > 1 ? `${best.alternativeTitle}: in` : 'In';
    return `${where} nine outages in ten, “${best.strategyTitle}” ${holdsFor(best, summary.horizonDays)}`;
  });
}

function holdsFor({ nineInTenDays: { value, low, high } }: StrategySummary, horizonDays: number): string {
  if (value === null) {
    const firm = low === null ? '' : `; 95\u00a0% interval from ${lowest(low)}`;
    return `holds to the end of the study (${atLeastThisLong(horizonDays)}${firm}); it does not look further.`;
  }
  const interval =
    value < 1 && high !== null && high <= MOST_DAYS_IN_HOURS
      ? hoursInterval(low ?? 0, high)
      : `${daysInterval({ value, low, high }, horizonDays)}\u00a0days`;
  return `holds for at least ${atLeastThisLong(value)} (95 % interval ${interval}).`;
}

/** An upper limit further off reads better in days. */
const MOST_DAYS_IN_HOURS = 2;

const lowest = (days: number): string => (days * 1440 < 1 ? 'the first minute' : atLeastThisLong(days));

/** Whole hours, the lower limit rounded down and the upper one up. */
function hoursInterval(low: number, high: number): string {
  return `${Math.floor(low * 24)}\u00a0to\u00a0${Math.ceil(high * 24)}\u00a0hours`;
}
