/** Array power against the input's limit. */
import type { UnitSpec } from '../../scenario/schema.ts';
import { inPercent, inW } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

/** Beyond this much over the input, clipping is more than a sunny noon's. */
const FAR_ABOVE = 1.5;

export const arrayPower: CheckSubjectSpec = {
  id: 'array-power',
  title: 'Power of the panels against the unit’s input',
  look: (context) => joinOutcomes(context.household.units.map((unit, u) => lookAt(context, unit, u))),
};

function lookAt({ observed }: CheckContext, { id, solar }: UnitSpec, u: number): Partial<CheckOutcome> {
  if (solar === undefined) return {};
  const peakW = solar.arrays.reduce((sum, a) => sum + a.peakW, 0);
  if (peakW <= solar.inputLimitW) return looked();
  const { solarAvailableWhPerDay: availableWh, solarClippedWhPerDay: clippedWh } = observed.units[u]!;
  const clipped = availableWh > 0 ? clippedWh / availableWh : 0;
  return looked({
    severity: peakW > FAR_ABOVE * solar.inputLimitW ? 'watch' : 'note',
    where: `units.${id}.solar.inputLimitW`,
    found: `${id} has ${inW(peakW)} of panels on an input of ${inW(solar.inputLimitW)}; ${inPercent(clipped)} of what they offered in the outages watched was clipped.`,
    numbers: [
      { what: 'panels', value: peakW, unit: 'W' },
      { what: 'input', value: solar.inputLimitW, unit: 'W' },
      { what: 'clipped', value: clipped * 100, unit: '%' },
    ],
    todo: 'On dull days nothing is lost. If much is clipped, face some of the panels another way or to the other unit.',
    rule: CHECK_RULES.arrayPower,
  });
}
