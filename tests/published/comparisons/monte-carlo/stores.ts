/** A store with a brim, and what it comes to before a target. */
import { streamsOf } from '../../../../packages/sim/src/chance/streams.ts';
import type { Comparison } from '../comparison.ts';
import { ceilingBank } from './banks.ts';
import { ceilingStore } from './exact-survival.ts';
import { createDayBank } from './day-bank.ts';
import { LARGEST_GAP, largestGap } from './gaps.ts';
import { endsOf, HAND_DRAWS, upOrDown, worstOverSeeds } from './lives.ts';

export const ceilings: readonly Comparison[] = (
  [
    [0.5, 3],
    [0.7, 3],
    [0.6, 5],
  ] as const
).map(([p, size]) => ({
  claim: `a store of ${size} days that gains one with chance ${p} and spills at the brim: whole curve, 40 days`,
  source: 'chances carried forward (C; Feller vol. 1)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => worstOverSeeds(ceilingBank(size, size, 40), upOrDown(p), ceilingStore(p, size, size, 40)),
}));

/** Mean lifetimes; the horizon is far enough out for what lies past it not to show. */
export const lifetimes: readonly Comparison[] = (
  [
    [0.5, 3, 1, 6],
    [0.5, 3, 3, 12],
    [0.5, 5, 2, 18],
    [0.6, 3, 3, 20.625],
  ] as const
).map(([p, size, start, mean]) => ({
  claim: `the same (${size} days, chance ${p}) started with ${start}: mean lifetime of ${mean} days`,
  source: 'expected days to the first empty; for one half, z(2N + 1 − z) (C)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => {
    const days = endsOf(ceilingBank(size, start, 250), upOrDown(p), 'means').map((lived) => lived.days);
    const found = days.reduce((sum, d) => sum + d, 0) / days.length;
    const variance = days.reduce((sum, d) => sum + (d - found) ** 2, 0) / (days.length - 1);
    return Math.abs(found - mean) / Math.sqrt(variance / days.length);
  },
}));

export const ruins: readonly Comparison[] = (
  [
    [0.5, 9, 10, 0.1],
    [0.45, 9, 10, 0.2101],
    [0.6, 3, 10, 0.2839],
    [0.52, 5, 10, 0.4013],
  ] as const
).map(([p, start, target, ruin]) => ({
  claim: `gambler’s ruin from ${start} of ${target} with chance ${p}: an empty bank before the target in ${ruin} of runs`,
  source: 'Feller vol. 1 ch. XIV (C)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => {
    const live = createDayBank(ceilingBank(target + 2, start, 300));
    const ruined = Array.from({ length: HAND_DRAWS }, (_, draw) => {
      const sun = upOrDown(p)(streamsOf('ruin', draw)('days'));
      return live(sun, (level) => level > target - 0.5).endedOnDay !== undefined ? 1 : 0;
    }).reduce<number>((sum, one) => sum + one, 0);
    return largestGap([ruined / HAND_DRAWS], [ruin], HAND_DRAWS);
  },
}));
