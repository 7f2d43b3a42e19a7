/** Loads and starts against the generator that the circuits run straight off. */
import { heightFactor } from '../../power/engine-derating.ts';
import { generatorShare } from '../../power/source-feed.ts';
import { unitsFedBy } from '../../scenario/fed-units.ts';
import type { GeneratorSpec } from '../../scenario/schema-sources.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { inW } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckOutcome, type DraftFinding } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

export const generatorLoads: CheckSubjectSpec = {
  id: 'generator-loads',
  title: 'Loads and starts against the generator',
  look: (context) => {
    const { sources, units } = context.household;
    const generator = sources?.generator;
    if (generator === undefined || !generator.passesThrough) return joinOutcomes([]);
    const fed = unitsFedBy(generator, units);
    return joinOutcomes(fed.map((unit) => lookAt(context, generator, unit, fed.length)));
  },
};

/** Heat is left out: it takes a few per cent more on the hottest days. */
function lookAt(
  context: CheckContext,
  { ratedW, surgeW = ratedW, volts, derating }: GeneratorSpec,
  unit: UnitSpec,
  fedUnits: number,
): Partial<CheckOutcome> {
  const high = derating === 'none' ? 1 : heightFactor(context.scenario.site.elevationM);
  const share = generatorShare(volts, fedUnits) * high;
  return looked(
    ...loadFinding(context, unit, share * ratedW),
    ...startFindings(context, unit, share * surgeW),
  );
}

function loadFinding({ household, observed }: CheckContext, unit: UnitSpec, givesW: number): DraftFinding[] {
  const seen = observed.units[household.units.indexOf(unit)]!;
  const askedW = seen.worstMinute.watts + unit.inverter.idleW;
  if (askedW <= givesW) return [];
  return [
    {
      severity: 'watch',
      where: 'sources.generator.ratedW',
      found: `With everything on, ${unit.id} was asked for ${inW(askedW)} in its worst minute (${seen.worstMinute.at}), its own idle watts included; the generator gives it ${inW(givesW)}. Its breaker would open while it runs.`,
      numbers: [
        { what: 'worst minute watched', value: askedW, unit: 'W' },
        { what: 'the generator gives it', value: givesW, unit: 'W' },
      ],
      todo: 'Keep large loads off while it runs, or let it only charge (passesThrough: false), or choose a larger one.',
      rule: CHECK_RULES.continuousRating,
    },
  ];
}

function startFindings(
  { household, observed }: CheckContext,
  unit: UnitSpec,
  givesW: number,
): DraftFinding[] {
  return household.circuits.flatMap((circuit, c) => {
    const seen = observed.circuits[c]!.starts.find((s) => s.unitId === unit.id);
    const askedW = (seen?.watts ?? 0) + unit.inverter.idleW;
    if (seen === undefined || askedW <= givesW) return [];
    const half = circuit.leg === 'both' ? ' (its half)' : '';
    return {
      severity: 'watch' as const,
      where: `circuits.${circuit.id}`,
      found: `${circuit.title ?? circuit.id} starting${half} with everything else on took ${unit.id} to ${inW(askedW)} (${seen.at}); for seconds the generator gives it ${inW(givesW)}. Its breaker would open while it runs.`,
      numbers: [
        { what: 'worst start watched, with everything else on', value: askedW, unit: 'W' },
        { what: 'the generator gives it for seconds', value: givesW, unit: 'W' },
      ],
      todo: 'Keep it off while the generator runs, ask about a soft starter, or give the generator’s real surgeW if it is more.',
      rule: CHECK_RULES.surge,
    };
  });
}
