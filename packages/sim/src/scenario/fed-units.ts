/** Which units a generator feeds. MODEL.md E5. */
import type { GeneratorSpec } from './schema-sources.ts';
import type { UnitSpec } from './schema.ts';

/** Units whose AC input the generator is plugged into: those that it names, or every one that has a charger. */
export function unitsFedBy<Unit extends Pick<UnitSpec, 'id' | 'charger'>>(
  { feeds }: Pick<GeneratorSpec, 'feeds'>,
  units: readonly Unit[],
): Unit[] {
  return units.filter(({ id, charger }) => feeds?.includes(id) ?? charger !== undefined);
}
