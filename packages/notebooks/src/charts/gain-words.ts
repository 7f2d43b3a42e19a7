/** A paired difference in words. */
import { atLeastThisLong, percent, plainTenths, signedTenths, type Estimate } from '@rideout/sim';
import { verdictOf, type Comparison } from './alternatives-comparison.ts';
import { counted } from './counted.ts';

const NBSP = '\u00a0';

/**
 * Length of a gain or a loss: "19 hours", "2.4 days". To the nearest, as tables and intervals tell it: a difference is
 * no promise of at least so much.
 */
export function gainLength(days: number): string {
  const length = Math.abs(days);
  const [minutes, hours] = [Math.round(length * 1440), Math.round(length * 24)];
  if (minutes < 60) return counted(minutes, 'minute').replace(' ', NBSP);
  if (hours < 24) return counted(hours, 'hour').replace(' ', NBSP);
  return counted(Number(plainTenths(length)), 'day').replace(' ', NBSP);
}

/** "2.4 days longer", "6 hours less", "no clear difference", "longer by more than the 14 days simulated can show". */
export function gainText(compared: Comparison): string {
  const { gain, horizonDays } = compared;
  const days = gain.nineInTenDays.value;
  const verdict = verdictOf(compared);
  const simulated = `the ${atLeastThisLong(horizonDays)} simulated`;
  if (verdict === 'hidden by the horizon') return `no difference within ${simulated}`;
  if (verdict === 'no difference') return 'no clear difference';
  if (days !== null) return `${gainLength(days)} ${verdict === 'longer' ? 'longer' : 'less'}`;
  return `${verdict === 'longer' ? 'longer' : 'less'} by more than ${simulated} can show`;
}

/** "95 % interval −2 to 7 hours"; rounded outwards to whole hours where all of it is below a day. */
export function gainInterval({ low, high }: Estimate): string {
  if (low === null && high === null) return '';
  const short = low !== null && high !== null && Math.max(-low, high) < 1;
  if (short) {
    const [from, to] = [wholeHours(Math.floor(low * 24)), wholeHours(Math.ceil(high * 24))];
    return `95${NBSP}% interval ${from}${NBSP}to${NBSP}${to}${NBSP}hours`;
  }
  const beyond = 'beyond what was simulated';
  const from = low === null ? beyond : `${signedTenths(low)}${high === null ? `${NBSP}days` : ''}`;
  const to = high === null ? beyond : `${signedTenths(high)}${NBSP}days`;
  return `95${NBSP}% interval ${from}${NBSP}to${NBSP}${to}`;
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
