/** What is lost on the way along a copper wire. MODEL.md §23. */
import type { Awg } from '../scenario/schema-wiring.ts';
import { circularMils } from './conductors.ts';

/** Ohms of a copper wire of one circular mil, one foot long, at about 75 °C: 12.9, the trade's constant. */
const COPPER_K = 12.9;
const FEET_PER_METRE = 1 / 0.3048;

/**
 * Volts lost there and back: V = 2 · K · I · L / CM, direct current or unity power factor, wire at about 75 °C.
 *
 * @param amps ≥ 0
 * @param runM one way, metres, ≥ 0
 */
export function voltageDropV(amps: number, runM: number, awg: Awg): number {
  return (2 * COPPER_K * amps * runM * FEET_PER_METRE) / circularMils(awg);
}
