/**
 * The quadratic loss model of an inverter in its published form: powers as shares of the rating,
 * η(p) = p / (p + k0 + k1 p + k2 p²); coefficients from the efficiencies at 10, 50 and 100 % load by solving the three
 * equations (Jantsch, Schmidt & Schmid 1992 have the same, from memory).
 */
export interface PartLoad {
  readonly k0: number;
  readonly k1: number;
  readonly k2: number;
}

export function partLoadOf(eta10: number, eta50: number, eta100: number): PartLoad {
  return {
    k0: 5 / 36 / eta10 - 1 / 4 / eta50 + 1 / 9 / eta100,
    k1: -5 / 12 / eta10 + 33 / 12 / eta50 - 4 / 3 / eta100 - 1,
    k2: 5 / 18 / eta10 - 5 / 2 / eta50 + 20 / 9 / eta100,
  };
}

/** The same as a scenario has it, for a rating of `ratedW`. */
export function lossesInW({ k0, k1, k2 }: PartLoad, ratedW: number) {
  return { idleW: k0 * ratedW, lossPerW: k1, lossPerW2: k2 / ratedW };
}
