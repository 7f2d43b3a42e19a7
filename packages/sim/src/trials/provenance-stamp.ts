import type { Provenance } from './study-summary.ts';

/**
 * Provenance in one line, for the foot of a table or a column of a file. The first 12 of the hash's characters tell
 * scenarios apart; `study.json` holds all of it.
 */
export function provenanceStamp(provenance: Provenance): string {
  const { scenarioHash, seed, draws, choosingDraws, freshSeed, askedWith, version } = provenance;
  const fresh = freshSeed === undefined ? '' : ` of ${freshSeed}`;
  const chosen = choosingDraws === undefined ? '' : `, chosen on ${choosingDraws} others`;
  const asked = askedWith === undefined ? '' : `; asked for with ${askedWith}`;
  return `scenario ${scenarioHash.slice(0, 12)}; seed ${seed}; draws ${draws}${fresh}${chosen}; version ${version}${asked}`;
}
