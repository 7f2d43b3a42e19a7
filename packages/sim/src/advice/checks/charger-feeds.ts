/** What a charger draws against the circuit that feeds it. */
import { CONTINUOUS_MINUTES, leastRatingA } from '../../power/continuous-load.ts';
import { bankCapacityWh } from '../../power/unit-parameters.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { inA, tenths } from './amounts.ts';
import type { CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

export const chargerFeeds: CheckSubjectSpec = {
  id: 'charger-feeds',
  title: 'Chargers against the circuits that feed them',
  look: ({ household }) => joinOutcomes(household.units.map(lookAt)),
};

function lookAt({ id, charger, battery }: UnitSpec): Partial<CheckOutcome> {
  if (charger === undefined) return {};
  const where = `units.${id}.charger.feed`;
  if (charger.feed === undefined)
    return unknown(where, 'the circuit that feeds the charger is not given', where);
  const { volts, breakerA } = charger.feed;
  const bankW = battery.modules * battery.module.maxChargeW;
  const drawnW = Math.min(charger.maxW, bankW / charger.efficiency); // AC, which maxW is of too
  const drawnA = drawnW / volts;
  const hours = bankCapacityWh(battery) / (drawnW * charger.efficiency);
  const lasts = hours * 60 >= CONTINUOUS_MINUTES;
  const neededA = lasts ? leastRatingA(drawnA) : drawnA;
  if (neededA <= breakerA) return looked();
  const how = lasts
    ? `for about ${tenths(hours)} h from empty, which asks for ${inA(neededA)}`
    : `for about ${tenths(hours)} h from empty`;
  return looked({
    severity: 'mend',
    where,
    found: `${id}’s charger draws ${inA(drawnA)} at ${volts} V ${how}; its feed has a ${inA(breakerA)} breaker.`,
    numbers: [
      { what: 'charger draws', value: drawnA, unit: 'A' },
      { what: 'feed must be rated', value: neededA, unit: 'A' },
      { what: 'breaker of the feed', value: breakerA, unit: 'A' },
      { what: 'hours from empty', value: hours, unit: 'h' },
    ],
    todo: 'Set the charger lower (most can be), or have a larger feed fitted. Nothing else may hang on that feed meanwhile.',
    rule: CHECK_RULES.chargerFeed,
  });
}
