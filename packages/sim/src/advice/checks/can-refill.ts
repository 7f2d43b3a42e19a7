/** Whether anything brings energy back to a unit during an outage. */
import type { HouseholdSpec } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';

/** Its panels, its charger from a generator or from hours of grid, or a vehicle's outlet. */
export function canRefill(unit: UnitSpec, { sources }: HouseholdSpec): boolean {
  if (unit.solar !== undefined) return true;
  if (sources?.vehicle?.unit === unit.id) return true;
  const fed = sources?.generator?.feeds?.includes(unit.id) ?? sources?.generator !== undefined;
  return unit.charger !== undefined && (fed || sources?.grid !== undefined);
}
