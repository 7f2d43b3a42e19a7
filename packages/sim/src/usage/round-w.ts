/**
 * Watts are kept to a 64th: sums of circuits are then exact in 32 bits up to 131 kW in any order, and what the units
 * deliver equals what the circuits get to the last bit.
 */
const STEPS_PER_W = 64;

export function roundW(watts: number): number {
  // quicker than Math.round, and the same for every number of 64ths but the largest below a half
  return Math.floor(watts * STEPS_PER_W + 0.5) / STEPS_PER_W;
}
