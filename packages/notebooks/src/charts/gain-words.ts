/** A paired difference in words. */
import { atLeastThisLong, percent, signedTenths, type Estimate } from '@rideout/sim';
import { verdictOf, type Comparison } from './alternatives-comparison.ts';

const NBSP = '\u00a0';

/** "2.4 days longer", "6 hours less", "no clear difference", "longer, by how much the 14 days simulated hide". */
export function gainText(compared: Comparison): string {
  const { gain, horizonDays } = compared;
  const days = gain.nineInTenDays.value;
  const verdict = verdictOf(compared);
  const hidden = `the ${atLeastThisLong(horizonDays)} simulated hide`;
  if (verdict === 'hidden by the horizon') return `${hidden} any difference`;
  if (verdict === 'no difference') return 'no clear difference';
  const longer = verdict === 'longer' ? 'longer' : 'less';
  return days === null ? `${longer}, by how much ${hidden}` : `${atLeastThisLong(Math.abs(days))} ${longer}`;
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
