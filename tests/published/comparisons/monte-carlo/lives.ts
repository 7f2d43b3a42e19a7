/** Many lives of one bank, the sun of each day put in by hand. */
import { streamsOf, type Stream } from '../../../../packages/sim/src/chance/streams.ts';
import { createDayBank, type DayBank } from './day-bank.ts';
import { dayNumbers, largestGap, SEEDS } from './gaps.ts';

/** Chance of ending later than day k, k = 1 … days. */
function sharesPast(endedOnDay: readonly (number | undefined)[], days: number): number[] {
  return dayNumbers(days).map(
    (k) => endedOnDay.filter((day) => day === undefined || day > k).length / endedOnDay.length,
  );
}

export const HAND_DRAWS = 800;

/** Ends of HAND_DRAWS runs a seed. @param sunOf loads of sun by day, made anew for each run from its own stream */
export function endsOf(bank: DayBank, sunOf: (chance: Stream) => (day: number) => number, seed: string) {
  const live = createDayBank(bank);
  return Array.from({ length: HAND_DRAWS }, (_, draw) => live(sunOf(streamsOf(seed, draw)('days'))));
}

export function worstOverSeeds(
  bank: DayBank,
  sunOf: (chance: Stream) => (day: number) => number,
  exact: readonly number[],
): number {
  const bySeed = SEEDS.map((seed) => endsOf(bank, sunOf, seed).map((lived) => lived.endedOnDay));
  const samples = [...bySeed, bySeed.flat()]; // each seed, and all of them together
  return Math.max(
    ...samples.map((ends) => largestGap(sharesPast(ends, bank.days), exact.slice(1), ends.length)),
  );
}

/** Two loads of sun on bright days, of which the evening takes one: up a day, or down a day. */
export const upOrDown = (p: number) => (chance: Stream) => () => (chance() < p ? 2 : 0);
