/** How deep a bank is drawn, night after night. */
import type { Stream } from '../../../../packages/sim/src/chance/streams.ts';
import type { Comparison } from '../comparison.ts';
import { depthAbove } from './exact-survival.ts';
import type { DayBank } from './day-bank.ts';
import { LARGEST_GAP, largestGap } from './gaps.ts';
import { endsOf, HAND_DRAWS } from './lives.ts';

const DEPTHS = [0, 0.5, 1, 1.5, 2, 3] as const;

export const depths: readonly Comparison[] = [0.5, 0.7].map((rho) => ({
  claim: `a load a day and exponential sun of mean 1/${rho}: share of nights deeper than ${DEPTHS.join(', ')} loads`,
  source: 'waiting time of the queue M/D/1, Erlang 1909 (C)',
  unit: 'standard errors',
  band: LARGEST_GAP,
  ours: () => {
    const capacity = 80;
    const bank: DayBank = { capacity, start: capacity, loadHours: '02:00-06:00', days: 60 };
    const exponential = (chance: Stream) => () => -Math.log(1 - chance()) / rho;
    const levels = endsOf(bank, exponential, 'depths').map((lived) => capacity - lived.level);
    const found = DEPTHS.map((x) => levels.filter((depth) => depth > x + 1e-6).length / levels.length);
    return largestGap(
      found,
      DEPTHS.map((x) => depthAbove(rho, x)),
      HAND_DRAWS,
    );
  },
}));
