/** Each circuit against its breaker: the 80 % rule, and what is switched on together. */
import { leastRatingA } from '../../power/continuous-load.ts';
import type { Circuit } from '../../scenario/scenario.ts';
import { sumOfNameplatesW } from '../../usage/nameplate.ts';
import { listed } from '../../trials/listed.ts';
import { inA } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome, type Severity } from './check-report.ts';
import { CHECK_RULES, type CheckRule } from './check-rules.ts';
import { circuitContinuousW, circuitV } from './household-loads.ts';

export const continuousLoads: CheckSubjectSpec = {
  id: 'continuous-loads',
  title: 'Loads against breakers, 125 % for those that last three hours',
  look: (context) => {
    const { circuits } = context.household;
    const untold = circuits.filter((c) => c.breakerA === undefined).map((c) => c.id);
    return joinOutcomes([
      ...circuits.map((circuit, c) => lookAt(context, circuit, c)),
      untold.length === 0
        ? {}
        : unknown('circuits', `no breaker given for ${listed(untold)}`, 'circuits.*.breakerA'),
    ]);
  },
};

function lookAt({ observed }: CheckContext, circuit: Circuit, c: number): Partial<CheckOutcome> {
  const { breakerA } = circuit;
  if (breakerA === undefined) return {};
  const volts = circuitV(circuit);
  const continuousA = circuitContinuousW(circuit) / volts;
  const allA = sumOfNameplatesW(circuit.appliances) / volts;
  const worstA = observed.circuits[c]!.worstMinute.watts / volts;
  const name = circuit.title ?? circuit.id;
  const where = `circuits.${circuit.id}.breakerA`;
  const numbers = [
    { what: 'load that lasts three hours or more', value: continuousA, unit: 'A' },
    { what: '125 % of it', value: leastRatingA(continuousA), unit: 'A' },
    { what: 'sum of nameplates', value: allA, unit: 'A' },
    { what: 'worst minute watched', value: worstA, unit: 'A' },
    { what: 'breaker', value: breakerA, unit: 'A' },
  ];
  const finding = (severity: Severity, found: string, todo: string, rule: CheckRule) =>
    looked({ severity, where, found, todo, numbers, rule });
  if (leastRatingA(continuousA) > breakerA)
    return finding(
      'mend',
      `${name}: ${inA(continuousA)} stay on for hours and ask for a breaker of ${inA(leastRatingA(continuousA))}; it has ${inA(breakerA)}.`,
      'Move some of it to another circuit. A larger breaker needs a larger wire: ask an electrician.',
      CHECK_RULES.continuousLoad,
    );
  const together = 'Agree what may not run together, or spread it over circuits.';
  if (worstA > breakerA)
    return finding(
      'watch',
      `${name}: the worst minute watched drew ${inA(worstA)} through a ${inA(breakerA)} breaker.`,
      together,
      CHECK_RULES.branchLoad,
    );
  if (leastRatingA(continuousA, allA - continuousA) > breakerA)
    return finding(
      'note',
      `${name}: everything on it at once is ${inA(allA)} on a ${inA(breakerA)} breaker; the worst minute watched drew ${inA(worstA)}.`,
      together,
      continuousA > 0 ? CHECK_RULES.continuousLoad : CHECK_RULES.branchLoad,
    );
  return looked();
}
