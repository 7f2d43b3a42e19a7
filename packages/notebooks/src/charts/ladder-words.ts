/** What is said of a ladder: money, gains, and how sure they are. */
import { gainLength, type LadderAnswer, type LadderRung } from '@rideout/sim';

/** `$ 1 100`, `free`: thousands apart, whatever the country. */
export function moneyText(amount: number, { currency }: Pick<LadderAnswer, 'currency'>): string {
  if (amount === 0) return 'free';
  const digits = String(Math.round(amount)).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
  return currency ? `${currency}\u00a0${digits}` : digits;
}

/** `nine outages in ten`. */
export function shareWords(share: number): string {
  if (share === 0.9) return 'nine outages in ten';
  if (share === 0.5) return 'half of the outages';
  return `${Math.round(share * 1000) / 10}\u00a0% of outages`;
}

/** How many outages tell the days; as many as one likes where less is asked of them than what nine in ten reach. */
export function drawsToTell({ confidence, provenance }: LadderAnswer): number {
  return confidence < 0.9 ? Infinity : provenance.draws;
}

/** `12 hours more`, `16 hours more, but 1.8 days less on average`, `no gain that stands out from chance`. */
export function rungGain({ gainDays: { value }, gainMeanDays, told }: LadderRung): string {
  if (told === 'not told from zero') return 'no gain that stands out from chance';
  if (told === 'a loss') return 'less than before: leave it out';
  if (told === 'on average') return 'longer on average, not clearly in these days';
  const gain = value === null ? 'longer than was simulated' : `${gainLength(value)} more`;
  if (told === 'clear') return gain;
  const { value: lost } = gainMeanDays;
  return `${gain}, but ${lost === null ? '' : `${gainLength(lost)} `}less on average`;
}

/** Of rungs above the last whose gain is clear, as the end of a sentence. */
export function restWords(rungs: number): string {
  if (rungs === 0) return '';
  return `; ${rungs === 1 ? 'one rung' : `${rungs} rungs`} more may bring more`;
}

export const ENDED: Readonly<Record<LadderAnswer['ended'], string>> = {
  'all taken': 'Then every step is taken.',
  'no gain': 'No further step was found to gain anything.',
  budget: 'The budget ends there.',
  horizon: 'There every outage outlasts the simulation: a longer one would show what more brings.',
};
