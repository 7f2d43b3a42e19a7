/** What stands under every check. */
import type { Scenario } from '../../scenario/scenario.ts';
import { scenarioCautions } from '../engine-caution.ts';

const CAUTION =
  'This looks at the description, not at your house, and only for what is listed above: what it did not find is not thereby in order. Your local code and a licensed electrician decide. Work on a panel, an inlet or a string of panels is theirs; never feed a panel without equipment that keeps it apart from the grid.';

export function checkCaution(scenario: Scenario): string {
  return [CAUTION, ...scenarioCautions(scenario)].join(' ');
}
