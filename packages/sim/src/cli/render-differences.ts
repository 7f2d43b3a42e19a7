import { longestLasting } from '../trials/longest-lasting.ts';
import type { Estimate, PairedDifference, StudySummary } from '../trials/study-summary.ts';
import { atLeastThisLong, percent } from '../trials/days-in-words.ts';
import { gainLength, gainLimits } from '../trials/gains-in-words.ts';
import { byAlternative } from './by-alternative.ts';

/**
 * Paired differences in words: for the first alternative every strategy against the first one, and for the strategy
 * that lasts longest there every alternative against the first one. The rest is only counted.
 */
export function differenceSentences(summary: StudySummary): string[] {
  const [firstGroup = []] = byAlternative(summary.strategies);
  if (firstGroup.length === 0 || summary.differences.length === 0) return [];
  const alternativeId = firstGroup[0]!.alternativeId;
  const strategyId = longestLasting(firstGroup).strategyId;
  const told = summary.differences.filter(({ first, second }) =>
    first.alternativeId === second.alternativeId
      ? first.alternativeId === alternativeId
      : first.strategyId === strategyId,
  );
  const untold = summary.differences.length - told.length;
  return [
    ...told.map((difference) => sentence(difference, summary)),
    ...(untold > 0 ? [`${untold} more comparisons are in the study’s tables.`] : []),
  ];
}

function sentence(difference: PairedDifference, summary: StudySummary): string {
  const { first, second, meanDays, nineInTenDays } = difference;
  const titles = (side: PairedDifference['first']) =>
    summary.strategies.find(
      (s) => s.alternativeId === side.alternativeId && s.strategyId === side.strategyId,
    )!;
  const sameHouse = first.alternativeId === second.alternativeId;
  const [one, other] = [titles(first), titles(second)];
  const pair = sameHouse
    ? [`“${one.strategyTitle}”`, `“${other.strategyTitle}”`]
    : [`“${one.strategyTitle}” with “${one.alternativeTitle}”`, `with “${other.alternativeTitle}”`];
  return `${pair[0]!} ${meanWords(meanDays)} ${pair[1]!}${limits(meanDays)}: ${shares(difference)}. ${nineWords(nineInTenDays)}`;
}

function meanWords(meanDays: Estimate): string {
  const value = meanDays.value ?? 0;
  if (spansZero(meanDays)) return 'lasts about as long on average as';
  return `lasts ${gainLength(value)} ${value > 0 ? 'longer' : 'less long'} on average than`;
}

function shares({ firstLongerFraction, secondLongerFraction }: PairedDifference): string {
  return `longer in ${percent(firstLongerFraction)} of the same outages, shorter in ${percent(secondLongerFraction)}`;
}

function nineWords(nine: Estimate): string {
  if (nine.value !== null) {
    if (spansZero(nine)) return `No clear difference in the time nine in ten reach${limits(nine)}.`;
    return `Nine in ten reach ${gainLength(nine.value)} ${nine.value > 0 ? 'more' : 'less'}${limits(nine)}.`;
  }
  if (nine.low !== null && nine.low > 0)
    return `Nine in ten hold longer; the horizon hides how much (at least ${atLeastThisLong(nine.low)}).`;
  if (nine.high !== null && nine.high < 0)
    return `Nine in ten hold less long; the horizon hides how much (at least ${atLeastThisLong(-nine.high)}).`;
  return 'The horizon hides the difference in the time nine in ten reach.';
}

function spansZero({ low, high }: Estimate): boolean {
  return !(low !== null && low > 0) && !(high !== null && high < 0);
}

function limits(gain: Estimate): string {
  const told = gainLimits(gain);
  return told === '' ? '' : ` (${told})`;
}
