/** At which reading a unit stops itself: at more than its cut-off where its modules are cold. MODEL.md §6.3, §7.2. */
import { floorFraction, type HouseholdSpec } from '@rideout/sim';

type Battery = HouseholdSpec['units'][number]['battery'];

export interface CutOff {
  readonly moduleC: number;
  readonly stopsFraction: number;
  readonly returnsFraction: number;
}

/**
 * The points of the battery's own curve, from warm to cold, down to the first that is no warmer than `coldestC`.
 * Points alone: what lies between them is the simulator's to say.
 */
export function cutOffs(battery: Battery, coldestC: number): CutOff[] {
  const fromWarm = battery.coldCapacity.map((point) => cutOffAt(battery, point)).reverse();
  const enough = fromWarm.findIndex(({ moduleC }) => moduleC <= coldestC);
  const reached = enough < 0 ? fromWarm : fromWarm.slice(0, enough + 1);
  return reached.filter(({ stopsFraction }, i) => stopsFraction !== reached[i - 1]?.stopsFraction);
}

/** What the cold holds back counts as below the cut-off; the unit returns as far above as it does when warm. */
function cutOffAt(
  { cutOffFraction, restartFraction }: Battery,
  [moduleC, drawable]: Battery['coldCapacity'][number],
): CutOff {
  const stopsFraction = floorFraction(cutOffFraction, drawable);
  const returnsFraction = Math.min(1, stopsFraction + restartFraction - cutOffFraction);
  return { moduleC, stopsFraction, returnsFraction };
}
