/**
 * Watts are kept to a 64th: sums of circuits are then exact in 32 bits up to 131 kW in any order, and what the units
 * deliver equals what the circuits get to the last bit.
 */
const STEPS_PER_W = 64;

export function roundW(watts: number): number {
  return Math.round(watts * STEPS_PER_W) / STEPS_PER_W;
}
