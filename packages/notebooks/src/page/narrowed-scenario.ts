/** Only what is asked about: some of the households, one strategy. Draws stay the same, and take a fraction of the time. */
import type { Scenario } from '@rideout/sim';

export function narrowedScenario(
  scenario: Scenario,
  alternativeIds: readonly string[],
  strategyId: string,
): Scenario {
  return {
    ...scenario,
    alternatives: scenario.alternatives
      .filter(({ id }) => alternativeIds.includes(id))
      .map((alternative) => ({
        ...alternative,
        household: {
          ...alternative.household,
          strategies: alternative.household.strategies.filter(({ id }) => id === strategyId),
        },
      })),
  };
}
