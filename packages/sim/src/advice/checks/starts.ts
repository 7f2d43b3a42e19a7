/** Starts against the surge rating, with everything else on. */
import type { Circuit } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { startsTogether } from '../../usage/start-extra.ts';
import { inW, ofDraws } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';
import { shareOf, startExtraW } from './household-loads.ts';

/** A start this close to the rating is worth a line. */
const CLOSE_FRACTION = 0.85;

export const starts: CheckSubjectSpec = {
  id: 'starts',
  title: 'Starts against the surge rating, with everything else on',
  look: (context) =>
    joinOutcomes(
      context.household.circuits.flatMap((circuit, c) =>
        startExtraW(circuit) > 0
          ? context.household.units.map((unit) => lookAt(context, circuit, c, unit))
          : [],
      ),
    ),
};

function lookAt(
  { observed, household }: CheckContext,
  circuit: Circuit,
  c: number,
  unit: UnitSpec,
): Partial<CheckOutcome> {
  const aloneW = shareOf(unit, circuit, household.units) * largestStartingW(circuit);
  if (aloneW === 0) return {};
  const { surgeW } = unit.inverter;
  const seen = observed.circuits[c]!.starts.find((s) => s.unitId === unit.id);
  const worstW = seen?.watts ?? 0;
  const name = circuit.title ?? circuit.id;
  const numbers = [
    { what: 'the start alone', value: aloneW, unit: 'W' },
    { what: 'worst start watched, with everything else on', value: worstW, unit: 'W' },
    { what: 'surge rating', value: surgeW, unit: 'W' },
    { what: 'outages watched with a start above it', value: seen?.surgeDraws ?? 0, unit: '' },
  ];
  const place = { where: `circuits.${circuit.id}`, numbers, rule: CHECK_RULES.surge };
  const half = circuit.leg === 'both' ? ' (its half)' : '';
  if (aloneW > surgeW)
    return looked({
      ...place,
      severity: 'mend',
      found: `${name} needs ${inW(aloneW)}${half} to start; ${unit.id} gives ${inW(surgeW)} for seconds: it cannot start it.`,
      todo: 'Measure the start with a meter that holds peaks; ask about a soft starter or a larger unit.',
    });
  if (seen !== undefined && seen.surgeDraws > 0)
    return looked({
      ...place,
      severity: 'watch',
      found: `${name} starting${half} with everything else on took ${unit.id} to ${inW(worstW)} (${seen.at}), above its surge rating of ${inW(surgeW)}. That happened in ${ofDraws(seen.surgeDraws, observed.draws)}.`,
      todo: 'Keep large loads off while it may start, part it from them by leg, or ask about a soft starter.',
    });
  if (worstW <= CLOSE_FRACTION * surgeW) return looked();
  return looked({
    ...place,
    severity: 'note',
    found: `${name} starting${half} with everything else on took ${unit.id} to ${inW(worstW)}, close to its surge rating of ${inW(surgeW)}.`,
    todo: 'Measure the real start before counting on it: labels rarely tell it.',
  });
}

/** Watts of the largest start on the circuit, running watts of what starts included. */
function largestStartingW({ appliances }: Circuit): number {
  return Math.max(
    0,
    ...appliances.map((a) =>
      a.kind !== 'measured' && 'startingW' in a
        ? startsTogether(a) * Math.max(a.startingW ?? 0, a.runningW)
        : 0,
    ),
  );
}
