/** A paired difference in words. */
import { atLeastThisLong, percent, signedTenths, type Estimate } from '@rideout/sim';
import { verdictOf, type Comparison } from './alternatives-comparison.ts';

const NBSP = '\u00a0';

/** "2.4 days longer", "6 hours less", "no clear difference", "longer by more than the 14 days simulated can show". */
export function gainText(compared: Comparison): string {
  const { gain, horizonDays } = compared;
  const days = gain.nineInTenDays.value;
  const verdict = verdictOf(compared);
  const simulated = `the ${atLeastThisLong(horizonDays)} simulated`;
  if (verdict === 'hidden by the horizon') return `no difference within ${simulated}`;
  if (verdict === 'no difference') return 'no clear difference';
  if (days !== null) return `${atLeastThisLong(Math.abs(days))} ${verdict === 'longer' ? 'longer' : 'less'}`;
  return `${verdict === 'longer' ? 'longer' : 'less'} by more than ${simulated} can show`;
}

/** "95 % interval −2 to 7 hours"; rounded outwards to whole hours where all of it is below a day. */
export function gainInterval({ low, high }: Estimate): string {
  if (low === null && high === null) return '';
  const short = low !== null && high !== null && Math.max(-low, high) < 1;
  const limits = short
    ? [wholeHours(Math.floor(low * 24)), wholeHours(Math.ceil(high * 24))]
    : [low, high].map((limit) => (limit === null ? 'beyond what was simulated' : signedTenths(limit)));
  return `95${NBSP}% interval ${limits.join(`${NBSP}to${NBSP}`)}${high === null ? '' : `${NBSP}${short ? 'hours' : 'days'}`}`;
}

/** In how many of the same outages. */
export function gainShares({ gain }: Comparison): string {
  return `longer in ${percent(gain.firstLongerFraction)} of the same outages, shorter in ${percent(gain.secondLongerFraction)}`;
}

/** The gain, its interval and its shares, without a name before it. */
export function gainSentence(compared: Comparison): string {
  const interval = gainInterval(compared.gain.nineInTenDays);
  return `${gainText(compared)}${interval ? ` (${interval})` : ''}; ${gainShares(compared)}.`;
}

function wholeHours(hours: number): string {
  return hours < 0 ? `−${-hours}` : `${hours}`;
}
