import { longestLasting } from '../trials/longest-lasting.ts';
import type { StrategySummary, StudySummary } from '../trials/study-summary.ts';
import { atLeastThisLong, intervalText } from '../trials/days-in-words.ts';
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

function holdsFor({ nineInTenDays }: StrategySummary, horizonDays: number): string {
  const { value, low } = nineInTenDays;
  if (value === null) {
    const firm = low === null ? '' : `; 95\u00a0% interval from ${lowest(low)}`;
    return `holds to the end of the study (${atLeastThisLong(horizonDays)}${firm}); it does not look further.`;
  }
  return `holds for at least ${atLeastThisLong(value)} (${intervalText(nineInTenDays, horizonDays)}).`;
}

const lowest = (days: number): string => (days * 1440 < 1 ? 'the first minute' : atLeastThisLong(days));
