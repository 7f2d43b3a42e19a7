/** Days of autonomy against runs of cloudy days. */
import type { Stream } from '../../../../packages/sim/src/chance/streams.ts';
import { near, type Comparison } from '../comparison.ts';
import { autonomyBank } from './banks.ts';
import { cloudyRuns } from './exact-survival.ts';
import { LARGEST_GAP } from './gaps.ts';
import { worstOverSeeds } from './lives.ts';

/** Bright and dull days that cling together: a two-state chain started in its long-run law. */
const clinging = (afterCloudy: number, afterClear: number, run: number) => (chance: Stream) => {
  let cloudy = chance() < afterClear / (1 - afterCloudy + afterClear);
  return (day: number) => {
    if (day > 0) cloudy = chance() < (cloudy ? afterCloudy : afterClear);
    return cloudy ? 0 : run + 1;
  };
};

export const runsOfCloud: readonly Comparison[] = (
  [
    [0.3, 0.3, 2, 0.10813132],
    [0.3, 0.3, 3, 0.56305994],
    [0.5, 0.2142857143, 3, 0.27821292],
    [0.6, 0.1714285714, 3, 0.20570153],
  ] as const
).flatMap(([afterCloudy, afterClear, run, printed]) => {
  const exact = cloudyRuns(afterCloudy, afterClear, run, 30);
  const days = `${run} cloudy days in a row (${afterCloudy.toFixed(2)} after cloudy, ${afterClear.toFixed(2)} after clear)`;
  return [
    {
      claim: `${days}: chance of none in 30, by our recursion`,
      source: 'Feller vol. 1 ch. XIII (C)',
      unit: 'share',
      band: near(printed, 5.1e-8),
      ours: () => exact[30]!,
    },
    {
      claim: `${days}: whole curve, 30 days`,
      source: 'Feller vol. 1 ch. XIII (C)',
      unit: 'standard errors',
      band: LARGEST_GAP,
      ours: () => worstOverSeeds(autonomyBank(run, 30), clinging(afterCloudy, afterClear, run), exact),
    },
  ];
});
