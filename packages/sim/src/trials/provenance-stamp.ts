import type { Provenance } from './study-summary.ts';

/**
 * Provenance in one line, for the foot of a table or a column of a file. The first 12 of the hash's characters tell
 * scenarios apart; `study.json` holds all of it.
 */
export function provenanceStamp({ scenarioHash, seed, draws, choosingDraws, version }: Provenance): string {
  const chosen = choosingDraws === undefined ? '' : `, chosen on ${choosingDraws} others`;
  return `scenario ${scenarioHash.slice(0, 12)}; seed ${seed}; draws ${draws}${chosen}; version ${version}`;
}
