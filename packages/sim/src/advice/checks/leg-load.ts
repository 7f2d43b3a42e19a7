/** Leg load against the continuous rating: the worst minute watched, and the sum of the nameplates. */
import type { UnitSpec } from '../../scenario/schema.ts';
import { nameplateW } from '../../usage/nameplate.ts';
import { listed } from '../../trials/listed.ts';
import { inW, ofDraws } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckNumber, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';
import { shareOf, unitNameplateW } from './household-loads.ts';

export const legLoad: CheckSubjectSpec = {
  id: 'leg-load',
  title: 'Load of each leg against its unit’s continuous rating',
  look: (context) => joinOutcomes(context.household.units.map((unit, u) => lookAt(context, unit, u))),
};

function lookAt(context: CheckContext, unit: UnitSpec, u: number): Partial<CheckOutcome> {
  const { observed, household } = context;
  const seen = observed.units[u]!;
  const { continuousW } = unit.inverter;
  const allW = unitNameplateW(unit, household);
  const worstW = seen.worstMinute.watts;
  const where = `units.${unit.id}.inverter.continuousW`;
  const numbers: CheckNumber[] = [
    { what: 'worst minute watched', value: worstW, unit: 'W' },
    { what: 'continuous rating', value: continuousW, unit: 'W' },
    { what: 'sum of nameplates', value: allW, unit: 'W' },
    { what: 'worst three hours, mean', value: seen.worstThreeHoursW, unit: 'W' },
    { what: 'outages watched with an overload trip', value: seen.overloadDraws, unit: '' },
  ];
  const single = tooLarge(context, unit);
  const large = single.map(({ name, watts }) => ({
    severity: 'mend' as const,
    where,
    found: `${name} alone asks ${unit.id} for ${inW(watts)}; its continuous rating is ${inW(continuousW)}.`,
    numbers: [
      { what: name, value: watts, unit: 'W' },
      { what: 'continuous rating', value: continuousW, unit: 'W' },
    ],
    todo: 'Keep this appliance off the backed-up circuits, or choose a larger unit.',
    rule: CHECK_RULES.singleLargestLoad,
  }));
  if (worstW > continuousW) {
    const trips = seen.overloadDraws > 0;
    const who = listed(seen.worstMinuteCircuits.map(({ id, watts }) => `${id} ${inW(watts)}`));
    const then = trips
      ? `It would have tripped in ${ofDraws(seen.overloadDraws, observed.draws)}.`
      : `It bears that for the ${unit.inverter.overloadMinutes} min it lasted.`;
    const found = `With everything on, ${unit.id} was asked for ${inW(worstW)} in its worst minute (${seen.worstMinute.at}: ${who}); its continuous rating is ${inW(continuousW)}. ${then}`;
    const todo = `Agree which of these may not run together, let a rule drop one of them, or move a circuit to the other leg.`;
    const severity = trips ? 'watch' : 'note';
    return looked(...large, { severity, where, found, numbers, todo, rule: CHECK_RULES.continuousRating });
  }
  if (allW <= continuousW) return looked(...large);
  const found = `Everything on ${unit.id} together is ${inW(allW)} by nameplate, above its ${inW(continuousW)}; the worst minute watched was ${inW(worstW)}.`;
  const todo =
    'Know that it can trip on an unusual evening: keep the largest appliances from running together.';
  return looked(...large, {
    severity: 'note',
    where,
    found,
    numbers,
    todo,
    rule: CHECK_RULES.continuousRating,
  });
}

/** Appliances that the unit could not carry even alone. */
function tooLarge({ household }: CheckContext, unit: UnitSpec) {
  return household.circuits.flatMap((circuit) => {
    const share = shareOf(unit, circuit, household.units);
    return circuit.appliances.flatMap((a) => {
      const watts = (share * nameplateW(a)) / a.count;
      return watts > unit.inverter.continuousW ? [{ name: `${a.id ?? a.kind} on ${circuit.id}`, watts }] : [];
    });
  });
}
