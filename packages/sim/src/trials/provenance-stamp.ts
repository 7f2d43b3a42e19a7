import type { Provenance } from './study-summary.ts';
import type { TraceProvenance } from './trace-provenance.ts';

/**
 * Provenance in one line, for the foot of a table or a column of a file. The first 12 of the hash's characters tell
 * scenarios apart; `study.json` holds all of it.
 */
export function provenanceStamp(provenance: Provenance | TraceProvenance): string {
  const { scenarioHash, seed, version } = provenance;
  return `scenario ${scenarioHash.slice(0, 12)}; seed ${seed}; ${drawn(provenance)}; version ${version}`;
}

function drawn(provenance: Provenance | TraceProvenance): string {
  if ('draw' in provenance) {
    const { draw, alternative, strategy } = provenance;
    return `draw ${draw}; alternative ${alternative}; strategy ${strategy}`;
  }
  const { draws, choosingDraws } = provenance;
  return choosingDraws === undefined ? `draws ${draws}` : `draws ${draws}, chosen on ${choosingDraws} others`;
}
