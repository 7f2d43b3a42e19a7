/** What stands under every check. */
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import { engineCautions } from '../engine-caution.ts';

const CAUTION =
  'This looks at the description, not at your house, and only for what is listed above: what it did not find is not thereby in order. Your local code and a licensed electrician decide. Work on a panel, an inlet or a string of panels is theirs; never feed a panel without equipment that keeps it apart from the grid.';

export function checkCaution(household: HouseholdSpec): string {
  return [CAUTION, ...engineCautions(household)].join(' ');
}
