/** Days reached, their intervals, and shares in words. "At least" must stay true, so days are rounded down, upper limits up. */
import {
  inSigns,
  inWords,
  lengthDown,
  lengthUp,
  limitsInSigns,
  limitsInWords,
  pastHorizon,
  type ToldLength,
} from './length-in-words.ts';
import type { Estimate } from './study-summary.ts';

/** Length of time for a sentence, rounded down: `19 hours` below a day, else `2.4 days`. */
export function atLeastThisLong(days: number): string {
  return inWords(lengthDown(days));
}

/** An upper bound, rounded up: `20 hours`, `2.5 days`. */
export function atMostThisLong(days: number): string {
  return inWords(lengthUp(days));
}

/** `atLeastThisLong` of a figure that the horizon may hide: null is `14 days or more`. */
export function reachText(days: number | null, horizonDays: number): string {
  return days === null ? `${atLeastThisLong(horizonDays)} or more` : atLeastThisLong(days);
}

/** For a column: `19 h`, `2.4 d`; null, hidden by the horizon, is `≥ 14 d`. */
export function reachCell(days: number | null, horizonDays: number): string {
  return inSigns(down(days, horizonDays));
}

/** The limits of an estimate: `14 hours` and `1.2 days`, or `2.1` and `2.7 days`. */
export function limitTexts(
  { low, high }: Estimate,
  horizonDays: number,
): { readonly low: string; readonly high: string } {
  return limitsInWords(down(low, horizonDays), up(high, horizonDays));
}

/** `95 % interval 2.1 to 2.7 days`, `95 % interval 14 hours to 1.2 days`. */
export function intervalText(estimate: Estimate, horizonDays: number): string {
  if (estimate.low === null) return `95\u00a0% interval beyond the ${atLeastThisLong(horizonDays)} simulated`;
  const { low, high } = limitTexts(estimate, horizonDays);
  return `95\u00a0% interval ${low}\u00a0to\u00a0${high}`;
}

/** For a column: `14 to 19 h`, `14 h to 1.2 d`, `2.1 to ≥ 14 d`; empty where the horizon hides both limits. */
export function intervalCell(estimate: Estimate, horizonDays: number): string {
  if (estimate.low === null) return '';
  const { low, high } = limitsInSigns(down(estimate.low, horizonDays), up(estimate.high, horizonDays));
  return `${low}\u00a0to\u00a0${high}`;
}

/** Its limits, each for a column of its own. */
export function limitCells(
  { low, high }: Estimate,
  horizonDays: number,
): { readonly low: string; readonly high: string } {
  return { low: inSigns(down(low, horizonDays)), high: inSigns(up(high, horizonDays)) };
}

function down(days: number | null, horizonDays: number): ToldLength {
  return days === null ? pastHorizon(horizonDays) : lengthDown(days);
}

function up(days: number | null, horizonDays: number): ToldLength {
  return days === null ? pastHorizon(horizonDays) : lengthUp(days);
}

/** A share as a whole percentage that never rounds to a certainty: `<1 %`, `>99 %`. */
export function percent(fraction: number | null): string {
  if (fraction === null) return '';
  if (fraction > 0 && fraction < 0.005) return '<1\u00a0%';
  if (fraction < 1 && fraction >= 0.995) return '>99\u00a0%';
  return `${Math.round(fraction * 100)}\u00a0%`;
}
