/** What the neutral carries: the difference of two legs, or the sum when one source feeds both. */
import { ampacityA, cordAmpacityA } from '../../power/conductors.ts';
import { LEG_V } from '../../power/nominal-volts.ts';
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { isBridged } from '../bridge-caution.ts';
import { inA } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

const SIZE_KEYS = ['units.*.wiring.cordAwg', 'units.*.wiring.wireAwg'];

export const neutralCurrents: CheckSubjectSpec = {
  id: 'neutral-current',
  title: 'Current in the neutral',
  look: (context) =>
    joinOutcomes(
      sumsUp(context.household)
        ? [sum(context)]
        : context.household.units.length === 2
          ? [difference(context)]
          : [],
    ),
};

/** One unit on both legs, always or while the other sleeps. */
function sumsUp(household: HouseholdSpec): boolean {
  const moves = household.strategies.some((s) =>
    s.rules.some((r) => r.by === 'sleep' && r.circuits === 'moved'),
  );
  return isBridged(household) || moves;
}

/** Each unit's own neutral goes with its hot wire and is looked at with it; at the panel they meet. */
function difference({ observed, household }: CheckContext): Partial<CheckOutcome> {
  const worstA = observed.worstNeutralA;
  const boundA = mostA(household.units);
  const bound =
    worstA > boundA
      ? `more than the ${inA(boundA)} that a unit gives for long`
      : `${inA(boundA)} with one leg full and the other empty`;
  return looked({
    severity: 'note',
    where: 'circuits.*.leg',
    found: `At the panel the neutral carries the difference of the legs: ${inA(worstA)} in the worst minute watched; ${bound}.`,
    numbers: [
      { what: 'worst minute watched', value: worstA, unit: 'A' },
      { what: 'one leg full, the other empty', value: boundA, unit: 'A' },
    ],
    todo: 'Share the large 120 V loads between the legs: it spares the neutral and the emptier bank.',
    rule: CHECK_RULES.neutral,
  });
}

function sum({ observed, household }: CheckContext): Partial<CheckOutcome> {
  const togetherA = observed.worstAllOnOneUnitW / LEG_V;
  const flowsA = Math.min(togetherA, mostA(household.units));
  const carriesA = neutralAmpacityA(household.units);
  const found = `With both legs on one unit their currents add up in the neutral: ${inA(togetherA)} in the worst minute watched, of which the unit gives ${inA(flowsA)} for long.`;
  const over = carriesA !== undefined && flowsA > carriesA;
  const finding = looked({
    severity: over ? 'mend' : carriesA === undefined ? 'watch' : 'note', // unknown is no reason to be calm
    where: 'units.*.wiring',
    found: over ? `${found} The smallest size on the way carries ${inA(carriesA)}.` : found,
    numbers: [
      { what: 'worst minute watched', value: togetherA, unit: 'A' },
      { what: 'the unit gives for long', value: flowsA, unit: 'A' },
      ...(carriesA === undefined
        ? []
        : [{ what: 'smallest size given carries', value: carriesA, unit: 'A' }]),
    ],
    todo: over
      ? 'Have the neutral brought up to the unit’s output before both legs hang on it.'
      : 'Have it confirmed that the neutral is of full size all the way: nothing opens before it overheats.',
    rule: CHECK_RULES.neutral,
  });
  return joinOutcomes([
    finding,
    carriesA === undefined ? unknown('units.*.wiring', 'no size of cord or wire given', ...SIZE_KEYS) : {},
  ]);
}

const mostA = (units: readonly UnitSpec[]) => Math.max(...units.map((u) => u.inverter.continuousW)) / LEG_V;

/** The weakest conductor that any unit's neutral goes through, taken to be of the size of its hot wire. */
function neutralAmpacityA(units: readonly UnitSpec[]): number | undefined {
  const sizes = units.flatMap(({ wiring }) => [
    ...(wiring?.cordAwg === undefined ? [] : [cordAmpacityA(wiring.cordAwg) ?? 0]),
    ...(wiring?.wireAwg === undefined ? [] : [ampacityA(wiring.wireAwg, wiring.terminalC ?? 60) ?? 0]),
  ]);
  return sizes.length === 0 ? undefined : Math.min(...sizes);
}
