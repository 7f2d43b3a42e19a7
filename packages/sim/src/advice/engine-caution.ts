/** What must be said wherever an engine is to run: carbon monoxide, fuel, wiring; and all that must be said together. */
import type { HouseholdSpec, Scenario } from '../scenario/scenario.ts';
import { bridgeCautions, scenarioBridgeCautions } from './bridge-caution.ts';

/**
 * The facts are those of the US Consumer Product Safety Commission (guidance on portable generators; report of 2022 on
 * deaths in 2011–2021: about 85 a year in the United States) and the US Centers for Disease Control.
 */
export const GENERATOR_CAUTION =
  'A generator’s exhaust is carbon monoxide: no smell, and it kills within minutes. Run it outdoors only, at least 6 m (20 ft) from the house, exhaust pointing away from doors, windows and vents; never in a garage, basement, shed or porch, open doors or not. Have carbon monoxide alarms on every floor and where people sleep. Dizzy, sick or weak: get out to fresh air and call for help. Refuel only when it is off and cool. Join it to a house only through a transfer switch or an interlocked inlet fitted by a licensed electrician: the local code decides.';

/** The same for a vehicle whose engine keeps its outlet going. */
export const VEHICLE_CAUTION =
  'A running engine makes carbon monoxide: charge from a vehicle outdoors, away from doors and windows, never in a garage, even with its door open.';

/** What to say of a household, none where nothing burns. */
export function engineCautions({ sources }: Pick<HouseholdSpec, 'sources'>): string[] {
  return [
    ...(sources?.generator === undefined ? [] : [GENERATOR_CAUTION]),
    ...(sources?.vehicle === undefined ? [] : [VEHICLE_CAUTION]),
  ];
}

/** All that must be said of a household: whatever burns in it, and one unit on both legs. */
export function householdCautions(
  household: Pick<HouseholdSpec, 'sources' | 'units' | 'circuits'>,
): string[] {
  return [...engineCautions(household), ...bridgeCautions(household)];
}

/** What to say of all versions of a scenario's household and the steps of its ladder together, each caution once. */
export function scenarioCautions(scenario: Pick<Scenario, 'alternatives' | 'ladder'>): string[] {
  const { alternatives, ladder } = scenario;
  const bought = (source: 'generator' | 'vehicle') =>
    ladder?.steps.some(({ moves }) =>
      moves.some((move) => 'set' in move && `${move.set}.`.startsWith(`sources.${source}.`)),
    ) === true;
  return [
    ...new Set([
      ...alternatives.flatMap((a) => engineCautions(a.household)),
      ...(ladder === undefined ? [] : engineCautions(ladder.household)),
      ...(bought('generator') ? [GENERATOR_CAUTION] : []),
      ...(bought('vehicle') ? [VEHICLE_CAUTION] : []),
      ...scenarioBridgeCautions(scenario),
    ]),
  ];
}
