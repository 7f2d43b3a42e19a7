/**
 * The simulator's chances against processes whose survival is known exactly. Every day of every curve is compared; the
 * figure shown is the largest gap in Monte Carlo standard errors, √(S(1 − S)/n), which must stay below 4.5 (some
 * hundreds of points are looked at, so the largest of them is commonly near 3).
 */
import type { Comparisons } from '../comparison.ts';
import { depths } from './depths.ts';
import { runsOfCloud } from './runs-of-cloud.ts';
import { ceilings, lifetimes, ruins } from './stores.ts';
import { studies } from './studies.ts';

export const monteCarloComparisons: Comparisons = {
  'a store with a brim': ceilings,
  'mean lifetimes': lifetimes,
  'runs of cloudy days': runsOfCloud,
  'ruin before a target': ruins,
  'depth of discharge': depths,
  'from a scenario to the curve': studies,
};
