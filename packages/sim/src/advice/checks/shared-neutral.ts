/** Circuits that share a neutral (multiwire pairs): their currents must subtract, never add. */
import { neutralA } from '../../power/neutral-current.ts';
import { LEG_V } from '../../power/nominal-volts.ts';
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import { isBridged } from '../bridge-caution.ts';
import { listed } from '../../trials/listed.ts';
import { inA } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';
import { sharedPairs } from './observe-circuit.ts';

export const sharedNeutral: CheckSubjectSpec = {
  id: 'shared-neutral',
  title: 'Circuits that share a neutral',
  look: (context) => {
    const pairs = sharedPairs(context.household.circuits);
    if (pairs.length > 0) return joinOutcomes(pairs.map((pair, i) => lookAt(context, pair, i)));
    return joinOutcomes([
      isBridged(context.household) ? bridged(context.household) : {},
      unknown('circuits', 'no circuits are said to share a neutral', 'circuits.*.sharedNeutralWith'),
    ]);
  },
};

/** Nobody has said of any two that they share one; on a bridge it would matter at once. */
function bridged({ units }: HouseholdSpec): Partial<CheckOutcome> {
  return looked({
    severity: 'watch',
    where: `units.${units[0]!.id}.leg`,
    found:
      'One 120 V unit feeds both legs: circuits that share a neutral would add up in it, no breaker opens for a neutral, and it is not said whether any do.',
    numbers: [],
    todo: 'Before both legs hang on it, have an electrician find such circuits and part them.',
    rule: CHECK_RULES.split240,
  });
}

/** Why the two would be in step: both on one leg, one source, or one source for a while. */
function inStepBecause({ units, strategies }: HouseholdSpec, sameLeg: boolean): string | undefined {
  if (units.length < 2) return 'one 120 V source feeds both';
  if (sameLeg) return 'both are on the same leg';
  const moving = strategies.filter((s) => s.rules.some((r) => r.by === 'sleep' && r.circuits === 'moved'));
  return moving.length === 0
    ? undefined
    : `one unit feeds both legs while the other sleeps (${listed(moving.map((s) => s.title))})`;
}

function lookAt(
  { household, observed }: CheckContext,
  [a, b]: [number, number],
  pair: number,
): Partial<CheckOutcome> {
  const first = household.circuits[a]!;
  const second = household.circuits[b]!;
  const seen = observed.pairs[pair]!;
  const breakersA = [first.breakerA, second.breakerA].filter((amps) => amps !== undefined);
  const names = listed([first.title ?? first.id, second.title ?? second.id]);
  const where = `circuits.${first.id}.sharedNeutralWith`;
  const why = inStepBecause(household, first.leg === second.leg);
  if (why === undefined)
    return looked({
      severity: 'note',
      where,
      found: `${names} share a neutral on opposite legs: it carries their difference, ${inA(seen.worstDifferenceW / LEG_V)} in the worst minute watched, as long as the two units keep half a cycle apart.`,
      numbers: [{ what: 'worst difference watched', value: seen.worstDifferenceW / LEG_V, unit: 'A' }],
      todo: 'Have it confirmed that both breakers open together, and that the units are set as a pair: two units that are not would add up in it.',
      rule: CHECK_RULES.sharedNeutral,
    });
  const most = breakersA.length === 2 ? neutralA(breakersA[0]!, breakersA[1]!, true) : undefined;
  const limit = most === undefined ? '' : ` Before either breaker opens it can reach ${inA(most)}.`;
  return looked({
    severity: 'mend',
    where,
    found: `${names} share a neutral, and ${why}: their currents add up in it, ${inA(seen.worstSumW / LEG_V)} in the worst minute watched. No breaker protects a neutral.${limit}`,
    numbers: [
      { what: 'worst sum watched', value: seen.worstSumW / LEG_V, unit: 'A' },
      ...(most === undefined ? [] : [{ what: 'sum of both breakers', value: most, unit: 'A' }]),
    ],
    todo: 'Do not use both at once until an electrician has put them on opposite legs of a pair, or given each its own neutral.',
    rule: CHECK_RULES.sharedNeutral,
  });
}
