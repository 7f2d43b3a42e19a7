/** Nominal voltages of a split-phase supply: from a leg to the neutral, and from one leg to the other. */
export const LEG_V = 120;
export const BOTH_LEGS_V = 240;
