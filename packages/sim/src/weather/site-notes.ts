/** What a person should look at twice in where a house is said to be and in the weather it is given. */
import type { CheckedScenario } from '../scenario/schema.ts';
import { normalsNotes } from './normals-notes.ts';
import type { NormalsPlace } from './normals-table.ts';
import { placeNotes } from './place-notes.ts';

/**
 * A site whose clock or normals are of another place, and monthly values that cannot be made: in sentences, by the keys
 * of the file; none where nothing is odd.
 */
export function siteNotes(
  { site, weather }: Pick<CheckedScenario, 'site' | 'weather'>,
  normals: ReadonlyMap<string, NormalsPlace>,
): string[] {
  const near = placeNotes(site, normals.get(weather.normals ?? ''));
  return [...near, ...(weather.monthly === undefined ? [] : normalsNotes(weather.monthly))];
}
