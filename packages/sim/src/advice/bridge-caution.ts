/** What must be said wherever one 120 V unit feeds both legs: a neutral that circuits share then carries their sum. */
import type { HouseholdSpec, Scenario } from '../scenario/scenario.ts';
import { householdAfter, type LadderPlan } from '../scenario/ladder-plan.ts';
import { listed } from '../trials/listed.ts';
import { sharedPairs } from './checks/observe-circuit.ts';

/** NEC 710.15(C), 210.4: the rules `split240` and `sharedNeutral` of checks/check-rules.ts. */
export const BRIDGE_CAUTION =
  'One 120 V unit joined to both legs: the legs are then in step, and where circuits share a neutral (multiwire circuits) their currents add up in it instead of cancelling. No breaker opens before it overheats, and 240 V circuits get nothing. Have a licensed electrician find and part such circuits before you bridge; the local code decides.';

type Bridged = Pick<HouseholdSpec, 'units' | 'circuits'>;

/** Whether one unit feeds either side of the panel. */
export function isBridged({ units }: Pick<HouseholdSpec, 'units'>): boolean {
  return units.some(({ leg }) => leg === 'both');
}

/** What to say of a household, sharper where circuits are said to share a neutral; none where each unit has its own leg. */
export function bridgeCautions(household: Bridged): string[] {
  return isBridged(household) ? wordsAbout(household) : [];
}

/** The same of all versions of a scenario's household and of its ladder, which may begin with one unit or come to it. */
export function scenarioBridgeCautions({
  alternatives,
  ladder,
}: Pick<Scenario, 'alternatives' | 'ladder'>): string[] {
  return [
    ...alternatives.flatMap(({ household }) => bridgeCautions(household)),
    ...(ladder !== undefined && ladderBridges(ladder) ? wordsAbout(ladder.household) : []),
  ];
}

function ladderBridges(ladder: NonNullable<Scenario['ladder']>): boolean {
  const start = householdAfter(
    ladder.household,
    ladder,
    ladder.steps.map(() => 0),
  );
  return isBridged(start) || ladder.steps.some(joinsLegs);
}

function joinsLegs({ moves }: LadderPlan['steps'][number]): boolean {
  return moves.some((move) => 'set' in move && /^units\.[^.]+\.leg$/.test(move.set) && move.value === 'both');
}

function wordsAbout({ circuits }: Pick<Bridged, 'circuits'>): string[] {
  const sharp = sharedPairs(circuits).map((pair) => {
    const names = listed(pair.map((c) => circuits[c]!.title ?? circuits[c]!.id));
    return `${names} share a neutral: with one 120 V unit on both legs never have them on at once before a licensed electrician has parted them. Their currents add up in it, and no breaker protects a neutral.`;
  });
  return [...sharp, BRIDGE_CAUTION];
}
