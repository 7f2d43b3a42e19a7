/** Days, intervals and shares in words. "At least" must stay true, so days are rounded down, upper limits up. */
import type { Estimate } from './study-summary.ts';

const SLACK = 1e-9; // 2.3 × 10 falls short of 23 by a last bit

/** One decimal, rounded down: 2.46 is `2.4`. Null is the horizon or more: `≥ 14`. */
export function daysDown(days: number | null, horizonDays: number): string {
  return days === null
    ? `≥\u00a0${daysDown(horizonDays, horizonDays).replace(/\.0$/, '')}`
    : (Math.floor(days * 10 + SLACK) / 10).toFixed(1);
}

/** One decimal, rounded up. Null as above. */
export function daysUp(days: number | null, horizonDays: number): string {
  return days === null ? daysDown(null, horizonDays) : (Math.ceil(days * 10 - SLACK) / 10).toFixed(1);
}

/** `2.1 to 2.7`; `2.1 to ≥ 14` when the horizon hides the upper limit; empty when it hides both. */
export function daysInterval({ low, high }: Estimate, horizonDays: number): string {
  if (low === null) return '';
  return `${daysDown(low, horizonDays)}\u00a0to\u00a0${daysUp(high, horizonDays)}`;
}

/** Length of time for a sentence, rounded down: `19 hours` below a day, else `2.4 days`. */
export function atLeastThisLong(days: number): string {
  if (days >= 1 - SLACK) {
    const text = (Math.floor(days * 10 + SLACK) / 10).toString();
    return `${text}\u00a0${text === '1' ? 'day' : 'days'}`;
  }
  const hours = Math.floor(days * 24 + SLACK);
  if (hours < 1) return `${Math.floor(days * 1440 + SLACK)}\u00a0minutes`;
  return `${hours}\u00a0${hours === 1 ? 'hour' : 'hours'}`;
}

/** A share as a whole percentage that never rounds to a certainty: `<1 %`, `>99 %`. */
export function percent(fraction: number | null): string {
  if (fraction === null) return '';
  if (fraction > 0 && fraction < 0.005) return '<1\u00a0%';
  if (fraction < 1 && fraction >= 0.995) return '>99\u00a0%';
  return `${Math.round(fraction * 100)}\u00a0%`;
}

/** A gain or loss: `1.7`, rounded to a tenth, without its sign. */
export function plainTenths(days: number): string {
  return (Math.round(Math.abs(days) * 10) / 10).toFixed(1);
}

/** Signed tenths for the limits of a difference: `−0.3`, `1.9`. */
export function signedTenths(days: number): string {
  const text = plainTenths(days);
  return days < 0 && text !== '0.0' ? `−${text}` : text;
}
