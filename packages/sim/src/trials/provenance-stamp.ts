import type { Provenance } from './study-summary.ts';
import type { TraceProvenance } from './trace-provenance.ts';

/**
 * Provenance in one line, for the foot of a table or a column of a file. The first 12 of the hash's characters tell
 * scenarios apart; `study.json` holds all of it.
 */
export function provenanceStamp(provenance: Provenance | TraceProvenance): string {
  const { scenarioHash, seed, version, askedWith } = provenance;
  const asked = askedWith === undefined ? '' : `; asked for with ${askedWith}`;
  return `scenario ${scenarioHash.slice(0, 12)}; seed ${seed}; ${drawn(provenance)}; version ${version}${asked}`;
}

function drawn(provenance: Provenance | TraceProvenance): string {
  if ('draw' in provenance) {
    const { draw, alternative, strategy } = provenance;
    return `draw ${draw}; alternative ${alternative}; strategy ${strategy}`;
  }
  const { draws, choosingDraws, freshSeed } = provenance;
  const fresh = freshSeed === undefined ? '' : ` of ${freshSeed}`;
  return `draws ${draws}${fresh}${choosingDraws === undefined ? '' : `, chosen on ${choosingDraws} others`}`;
}
