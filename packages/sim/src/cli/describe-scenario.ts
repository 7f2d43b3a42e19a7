import type { Scenario } from '../scenario/scenario.ts';
import { scenarioHash } from '../scenario/scenario-hash.ts';
import { describeSources } from './describe-sources.ts';

/** The scenario told back, so that a slip that is allowed can still be seen. */
export function describeScenario(path: string, scenario: Scenario, alternative: number): string[] {
  const { outage, weather, site, alternatives } = scenario;
  const { household } = alternatives[alternative]!;
  const { units, circuits, strategies } = household;
  const when = outage.startLocal ?? `any minute of month ${outage.months!.join(', ')}`;
  const source =
    weather.source.kind === 'year'
      ? `the year of ${weather.source.year.name}`
      : `weather made from the normals of ${weather.source.name}`;
  const legs = (leg: string) => circuits.filter((c) => c.leg === leg).length;
  return [
    `${path} can be used (scenario ${scenarioHash(scenario)}): ${scenario.title}`,
    `  outage    starts ${when}, ${site.timeZone}; looked at for ${outage.horizonDays} days${outage.stormLed ? '; led by a storm' : ''}`,
    `  weather   ${source}`,
    ...units.map((u) => {
      const solarW = u.solar?.arrays.reduce((sum, a) => sum + a.peakW, 0) ?? 0;
      return `  unit      ${u.id} on ${u.leg}: ${u.inverter.continuousW} W, ${u.battery.modules} × ${u.battery.module.capacityWh} Wh, ${solarW} W of panels`;
    }),
    ...describeSources(household),
    `  circuits  ${circuits.length}: ${legs('L1')} on L1, ${legs('L2')} on L2, ${legs('both')} at 240 V; ${circuits.filter((c) => c.tier === 1).length} in tier 1`,
    ...strategies.map(
      (s) =>
        `  strategy  ${s.id}: ${s.title} (${s.carriedOutBy === 'switch' ? 'by a switch' : 'by hand'}, ${s.rules.length} rules)`,
    ),
    ...alternatives.map((a) => `  version   ${a.id}: ${a.title}`),
  ];
}
