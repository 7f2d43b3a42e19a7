/** Which 120 V circuits a unit reaches. MODEL.md §5.1. */
import type { CircuitSpec, UnitSpec } from './schema.ts';

/** A unit on `both` feeds either side of the panel with 120 V; a 240 V circuit hangs on no single unit. */
export function feedsLeg(unitLeg: UnitSpec['leg'], circuitLeg: CircuitSpec['leg']): boolean {
  return circuitLeg !== 'both' && (unitLeg === 'both' || unitLeg === circuitLeg);
}
