/** Gains and losses in words. A difference is no promise of at least so much: it is told to the nearest, its limits outwards. */
import {
  inSigns,
  inWords,
  lengthDown,
  lengthNear,
  lengthUp,
  limitsInSigns,
  limitsInWords,
  type ToldLength,
} from './length-in-words.ts';
import type { Estimate } from './study-summary.ts';

/** Length of a gain or a loss, without its sign: `19 hours`, `2.4 days`. */
export function gainLength(days: number): string {
  return inWords(lengthNear(Math.abs(days)));
}

/** With its sign: `−19 hours`. */
export function signedGainLength(days: number): string {
  return inWords(signed(days, lengthNear));
}

/** `19 h`, `−2.4 d`; null, beyond the horizon, is `hidden`. */
function gainCell(days: number | null): string {
  return days === null ? HIDDEN : inSigns(signed(days, lengthNear));
}

/** Figure, lower and upper limit, each for a column of its own. */
export function gainCells(gain: Estimate): readonly [value: string, low: string, high: string] {
  const { low, high } = limitCells(gain);
  return [gainCell(gain.value), low, high];
}

function limitCells({ low, high }: Estimate): { readonly low: string; readonly high: string } {
  return {
    low: low === null ? HIDDEN : inSigns(lowest(low)),
    high: high === null ? HIDDEN : inSigns(highest(high)),
  };
}

/** `−2 to 7 hours`, `14 hours to 1.2 days`, `2.1 days to beyond what was simulated`; empty where nothing is known. */
export function gainLimits(gain: Estimate): string {
  if (gain.low === null && gain.high === null) return '';
  if (gain.low === null) return `beyond what was simulated to ${inWords(highest(gain.high!))}`;
  if (gain.high === null) return `${inWords(lowest(gain.low))} to beyond what was simulated`;
  const { low, high } = limitsInWords(lowest(gain.low), highest(gain.high));
  return `${low}\u00a0to\u00a0${high}`;
}

/** `95 % interval −2 to 7 hours`. */
export function gainInterval(gain: Estimate): string {
  const told = gainLimits(gain);
  return told === '' ? '' : `95\u00a0% interval ${told}`;
}

/** Figure and limits in one column: `3 h (1 to 7 h)`, `−1.5 d (−2.0 d to 3 h)`. */
export function gainWithLimitsCell(gain: Estimate): string {
  const { low, high } =
    gain.low === null || gain.high === null
      ? limitCells(gain)
      : limitsInSigns(lowest(gain.low), highest(gain.high));
  return `${gainCell(gain.value)} (${low} to ${high})`;
}

const HIDDEN = 'hidden';

const lowest = (days: number): ToldLength => signed(days, days < 0 ? lengthUp : lengthDown);
const highest = (days: number): ToldLength => signed(days, days < 0 ? lengthDown : lengthUp);

function signed(days: number, told: (length: number) => ToldLength): ToldLength {
  const { amount, unit } = told(Math.abs(days));
  return { amount: days < 0 && amount !== '0' ? `−${amount}` : amount, unit };
}
