/** The needs of a household: as written, or told from what its circuits say they serve. */
import { need, type NeedSpec } from './schema-needs.ts';

interface CircuitSaid {
  readonly id: string;
  readonly need?: string | undefined;
  readonly appliances: readonly object[];
}

/** Where nobody said how many drink, and what stands in the kitchen and the pressure tank; common practice, no source. */
const WATER = { persons: 2, storedLitres: 20 };

const COOLTH = ['cool', 'coolth', 'cooling'];

/** @returns none when nothing is written and no circuit names any */
export function needsOf(
  written: readonly NeedSpec[] | undefined,
  circuits: readonly CircuitSaid[],
): NeedSpec[] {
  if (written !== undefined) return [...written];
  const ids = [...new Set(circuits.flatMap((c) => c.need ?? []))];
  return ids.map((id) => need.parse({ id, ...measureOf(id, circuits) }));
}

function measureOf(id: string, circuits: readonly CircuitSaid[]) {
  const serving = circuits.filter((c) => c.need === id);
  if (id === 'food' && serving.some((c) => keeps(c, 'cools'))) return { measure: 'cold' };
  if (id === 'water') return { measure: 'water', ...WATER };
  if (id === 'warmth' && serving.some((c) => keeps(c, 'heats'))) return { measure: 'warmth' };
  if (COOLTH.includes(id) && serving.some((c) => keeps(c, 'cools'))) return { measure: 'coolth' };
  return { measure: 'power' };
}

/** Whether a thermostat on the circuit does that. */
export function keeps({ appliances }: Pick<CircuitSaid, 'appliances'>, does: 'cools' | 'heats'): boolean {
  return appliances.some((a) => 'does' in a && a.does === does);
}

/** Ids of the circuits that serve a need. */
export function circuitsServing(need: NeedSpec, circuits: readonly CircuitSaid[]): string[] {
  return need.circuits ?? circuits.filter((c) => c.need === need.id).map((c) => c.id);
}
