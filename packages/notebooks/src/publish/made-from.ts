/** What a page is made from, in a line: equal lines, equal figures. */
import { provenanceStamp, scenarioHash, VERSION } from '@rideout/sim';
import type { EmbeddedStudy } from '../page/embedded-study.ts';

export function madeFrom({ scenario, summary, seed, draws }: EmbeddedStudy): string {
  const { source } = scenario.weather;
  const own = {
    scenarioHash: scenarioHash(scenario),
    scenarioTitle: scenario.title,
    seed,
    draws,
    version: VERSION,
    weatherName: source.kind === 'normals' ? source.name : source.year.name,
  };
  return provenanceStamp(summary?.provenance ?? own);
}
