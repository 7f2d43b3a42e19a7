/** What the reader changed from the household's file, each change in a few words. */
import type { Provenance, Scenario } from '@rideout/sim';
import type { ToldProvenance } from '../charts/changes-sentence.ts';
import { modulesWords } from './modules-everywhere.ts';
import { anyOfMonths } from './months-text.ts';
import type { RunSettings } from './page-settings.ts';
import { stormWords, switchWords } from './setting-words.ts';

/** None where the settings say what the file says. */
export function changedWords(scenario: Scenario, settings: RunSettings): string[] {
  const { months, stormLed, modulesPerUnit, carriedOutBy } = settings;
  const { outage, alternatives } = scenario;
  const units = alternatives.flatMap(({ household }) => household.units);
  const strategies = alternatives.flatMap(({ household }) => household.strategies);
  const changes: string[] = [];
  if (months !== undefined && !isFiled(months, outage)) changes.push(`begins in ${anyOfMonths(months)}`);
  if (stormLed !== undefined && stormLed !== outage.stormLed)
    changes.push(`the storm that took the grid ${stormWords(stormLed)}`);
  if (modulesPerUnit !== undefined && units.some(({ battery }) => battery.modules !== modulesPerUnit))
    changes.push(modulesWords(modulesPerUnit));
  if (carriedOutBy !== undefined && strategies.some((strategy) => strategy.carriedOutBy !== carriedOutBy))
    changes.push(`circuits are switched ${switchWords(carriedOutBy)}, whatever a strategy’s name says`);
  return changes;
}

function isFiled(months: readonly number[], outage: Scenario['outage']): boolean {
  return outage.startLocal === undefined && String(months) === String(outage.months ?? []);
}

/** The answer with what was changed beside where it is from; the same answer where nothing was. */
export function withChanges<T extends { readonly provenance: Provenance }>(
  answer: T,
  changes: readonly string[],
): T {
  if (changes.length === 0) return answer;
  const provenance: ToldProvenance = { ...answer.provenance, changes };
  return { ...answer, provenance };
}

/** The answer as the library gave it: for files that are to be the very ones of the command line. */
export function withoutChanges<T extends { readonly provenance: ToldProvenance }>(answer: T): T {
  const { changes, ...provenance } = answer.provenance;
  return changes === undefined ? answer : { ...answer, provenance };
}
