import { scenarioHash } from '../scenario/scenario-hash.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { weatherNameOf } from '../trials/study.ts';
import type { Provenance } from '../trials/study-summary.ts';
import { VERSION } from '../version.ts';
import type { StudyQuestion } from './ask-study.ts';
import { freshSeed } from './fresh-seed.ts';

/** Of advice: the scenario as given, not the variants of it that were tried. */
export function adviceProvenance(
  scenario: Scenario,
  { seed, draws, choosingDraws }: StudyQuestion & { readonly choosingDraws?: number },
): Provenance {
  return {
    scenarioHash: scenarioHash(scenario),
    scenarioTitle: scenario.title,
    seed,
    draws,
    ...(choosingDraws !== undefined && { choosingDraws, freshSeed: freshSeed(seed) }),
    version: VERSION,
    weatherName: weatherNameOf(scenario),
  };
}
