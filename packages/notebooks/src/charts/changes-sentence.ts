/** What a reader changed from the household's file, for wherever figures say where they are from. */
import type { Provenance } from '@rideout/sim';

/** Where figures are from; each change in a few words, none where they are of the file as it is. */
export interface ToldProvenance extends Provenance {
  readonly changes?: readonly string[];
}

/** With the space before it; empty where nothing was changed. */
export function changesSentence(changes: readonly string[] = []): string {
  return changes.length > 0 ? ` As changed here: ${changes.join('; ')}.` : '';
}
