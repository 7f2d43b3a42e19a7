/** A paired difference in words. */
import { atLeastThisLong, gainInterval, gainLength, percent } from '@rideout/sim';
import { verdictOf, type Comparison } from './alternatives-comparison.ts';

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

/** In how many of the same outages. */
export function gainShares({ gain }: Comparison): string {
  return `longer in ${percent(gain.firstLongerFraction)} of the same outages, shorter in ${percent(gain.secondLongerFraction)}`;
}

/** The gain, its interval and its shares, without a name before it. */
export function gainSentence(compared: Comparison): string {
  const interval = gainInterval(compared.gain.nineInTenDays);
  return `${gainText(compared)}${interval ? ` (${interval})` : ''}; ${gainShares(compared)}.`;
}
