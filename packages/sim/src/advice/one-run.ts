/** A scenario narrowed to one alternative and one strategy: the same draws, an eighth of the work. */
import type { Scenario } from '../scenario/scenario.ts';
import type { RunChoice } from '../trials/live-draw.ts';

/** @throws RangeError when the choice names no alternative or strategy of the scenario */
export function narrowedTo(scenario: Scenario, { alternative, strategy }: RunChoice): Scenario {
  const chosen = scenario.alternatives[alternative];
  const plan = chosen?.household.strategies[strategy];
  if (chosen === undefined || plan === undefined)
    throw new RangeError(`no alternative ${alternative} with strategy ${strategy} in this scenario`);
  return {
    ...scenario,
    alternatives: [{ ...chosen, household: { ...chosen.household, strategies: [plan] } }],
  };
}
