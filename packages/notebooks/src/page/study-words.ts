/** What was simulated, in a sentence or two: it stands on paper too, where the controls do not. */
import { atLeastThisLong, type Scenario } from '@rideout/sim';
import { counted } from '../charts/counted.ts';
import type { Look } from '../charts/look.ts';
import { anyOfMonths } from './months-text.ts';
import { startText } from './start-text.ts';

/** Of the household (alternative) shown. `begins`: when, where a page has months of its own. */
export function studyWords(
  scenario: Scenario,
  alternativeId: string,
  look: Pick<Look, 'clock'> = { clock: 24 },
  begins = beginsWords(scenario, look),
): string {
  const { outage, site, title } = scenario;
  const shown = scenario.alternatives.find((a) => a.id === alternativeId) ?? scenario.alternatives[0]!;
  const { circuits, units } = shown.household;
  const storm = outage.stormLed ? ', with the storm that took the grid still overhead' : '';
  const essentials = circuits
    .filter((circuit) => circuit.tier === 1)
    .map((circuit) => circuit.title ?? circuit.id);
  return (
    `${title}${site.place ? `, ${site.place}` : ''}. Outages of up to ${atLeastThisLong(outage.horizonDays)}, beginning ${begins}${storm}. ` +
    `${shown.title}: ${units.map(({ battery, leg }) => `${counted(battery.modules, 'battery module')} on ${leg}`).join(', ')}. ` +
    `The essentials (tier 1): ${essentials.join(', ')}.`
  );
}

function beginsWords({ outage }: Scenario, { clock }: Pick<Look, 'clock'>): string {
  return outage.startLocal
    ? `on ${startText(outage.startLocal, clock)}`
    : `at any minute of ${anyOfMonths(outage.months ?? [])}`;
}
