/** Breaker, inlet, cord and wire of each unit against what it puts out. */
import { mostBreakerA } from '../../power/conductors.ts';
import { leastRatingA } from '../../power/continuous-load.ts';
import { LEG_V } from '../../power/nominal-volts.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { listed } from '../../trials/listed.ts';
import { inA, inAwg } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';
import { PASSAGE_KEYS, passages, type Passage } from './unit-passages.ts';

export const unitOutput: CheckSubjectSpec = {
  id: 'unit-output',
  title: 'Inlet, cord, wire and breaker against each unit’s output',
  look: (context) => joinOutcomes(context.household.units.flatMap((unit, u) => lookAt(context, unit, u))),
};

function lookAt({ observed }: CheckContext, unit: UnitSpec, u: number): Partial<CheckOutcome>[] {
  const wiring = unit.wiring ?? {};
  const missing = PASSAGE_KEYS.filter((key) => wiring[key] === undefined).map(
    (key) => `units.${unit.id}.wiring.${key}`,
  );
  const way = passages(unit);
  const threeHoursA = observed.units[u]!.worstThreeHoursW / LEG_V;
  return [
    ...way.map((passage) => lookAtPassage(unit, passage)),
    lookAtHours(unit, way, threeHoursA),
    breakerBeforeWire(unit),
    missing.length === 0
      ? {}
      : unknown(`units.${unit.id}.wiring`, `not given: ${untold(missing)}`, ...missing),
  ];
}

const NAMES = {
  breakerA: 'the unit’s breaker',
  inletA: 'its inlet',
  cordAwg: 'its cord',
  wireAwg: 'its wire to the panel',
};

function untold(missing: readonly string[]): string {
  return missing.map((key) => NAMES[key.split('.').at(-1) as keyof typeof NAMES]).join(', ');
}

const MOST_FOR_HOURS = 1 / leastRatingA(1);

function flowsAtMostA({ inverter, wiring }: UnitSpec): number {
  return Math.min(inverter.continuousW / LEG_V, wiring?.breakerA ?? Infinity);
}

/**
 * What may flow is the rated output, or less where a breaker opens before. A breaker that opens early is a nuisance;
 * anything else that carries less than may flow can overheat.
 */
function lookAtPassage(unit: UnitSpec, passage: Passage): Partial<CheckOutcome> {
  const { key, name, carriesA, rule } = passage;
  const ratedA = unit.inverter.continuousW / LEG_V;
  const flowsA = flowsAtMostA(unit);
  const where = `units.${unit.id}.wiring.${key}`;
  const numbers = [
    { what: 'rated output', value: ratedA, unit: 'A' },
    { what: '125 % of it', value: leastRatingA(ratedA), unit: 'A' },
    { what: `${name} carries`, value: carriesA, unit: 'A' },
  ];
  if (key === 'breakerA' && ratedA > carriesA)
    return looked({
      severity: 'watch',
      where,
      found: `${unit.id} can put out ${inA(ratedA)}; its breaker opens above ${inA(carriesA)}.`,
      numbers,
      todo: 'Plan with the breaker’s rating, not the unit’s. A larger breaker needs a larger wire.',
      rule,
    });
  if (flowsA > carriesA) {
    const todo =
      key === 'inletA'
        ? 'Have an inlet of the unit’s rating fitted, or a breaker of the inlet’s.'
        : 'Have it replaced by a larger size, or a breaker of its rating put before it.';
    const found = `${unit.id} can send ${inA(flowsA)} through its ${name}, which carries ${inA(carriesA)}.`;
    return looked({ severity: 'mend', where, found, numbers, todo, rule });
  }
  return looked();
}

/** What may flow for hours is 80 % of the weakest passage; told once for the whole way. */
function lookAtHours(unit: UnitSpec, all: readonly Passage[], threeHoursA: number): Partial<CheckOutcome> {
  const flowsA = flowsAtMostA(unit);
  const short = all.filter(({ carriesA }) => carriesA >= flowsA && leastRatingA(flowsA) > carriesA);
  if (short.length === 0) return {};
  const weakestA = Math.min(...short.map((p) => p.carriesA));
  const past = leastRatingA(threeHoursA) > weakestA;
  const which = listed(short.map(({ name, carriesA }) => `${name} ${inA(carriesA)}`));
  return {
    findings: [
      {
        severity: past ? 'watch' : 'note',
        where: `units.${unit.id}.wiring`,
        found: `${unit.id} can put out ${inA(flowsA)}, but for hours on end its way to the panel should carry ${inA(MOST_FOR_HOURS * weakestA)} at most (80 % of the weakest: ${which}). The worst three hours watched had a mean of ${inA(threeHoursA)}.`,
        numbers: [
          { what: 'output at most', value: flowsA, unit: 'A' },
          { what: '125 % of it', value: leastRatingA(flowsA), unit: 'A' },
          { what: 'worst three hours watched, mean', value: threeHoursA, unit: 'A' },
          ...short.map(({ name, carriesA }) => ({ what: `${name} carries`, value: carriesA, unit: 'A' })),
        ],
        todo: past
          ? 'Have the next size fitted before anybody leans on the unit for hours.'
          : 'Enough for what was watched; add no heaters or chargers that run for hours without the next size.',
        rule: CHECK_RULES.sourceWires,
      },
    ],
  };
}

function breakerBeforeWire({ id, wiring }: UnitSpec): Partial<CheckOutcome> {
  if (wiring?.breakerA === undefined || wiring.wireAwg === undefined) return {};
  const { breakerA, wireAwg, terminalC = 60 } = wiring;
  const most = mostBreakerA(wireAwg, terminalC) ?? 0;
  if (breakerA <= most) return looked();
  return looked({
    severity: 'mend',
    where: `units.${id}.wiring.breakerA`,
    found: `A ${inA(breakerA)} breaker stands before ${id}’s wire of ${inAwg(wireAwg)}, which may have ${inA(most)} at most: the wire can overheat before it opens.`,
    numbers: [
      { what: 'breaker', value: breakerA, unit: 'A' },
      { what: 'largest breaker for the wire', value: most, unit: 'A' },
      { what: 'terminals', value: terminalC, unit: '°C' },
    ],
    todo: 'Have an electrician fit the smaller breaker or the larger wire.',
    rule: CHECK_RULES.wireBreaker,
  });
}
