/** What a generator burns. MODEL.md E2. */
import type { GeneratorSpec } from '../scenario/schema-sources.ts';

/** A straight line: litres an hour = noLoadLPerHour + litresPerKWh · kW delivered. */
export interface FuelLine {
  readonly noLoadLPerHour: number;
  readonly litresPerKWh: number;
}

type Fuel = GeneratorSpec['fuel'];

/**
 * Fuel a kWh at the shaft of a gasoline engine under a share of its full load, 0…1, L/kWh. ASABE D497, engines in
 * fields, fifteen per cent above new ones on the bench (coefficients from memory).
 */
export function gasolineEngineLPerKWh(loadFraction: number): number {
  return 2.74 * loadFraction + 3.15 - 0.203 * Math.sqrt(697 * loadFraction);
}

/** What of the shaft's power a small generator delivers. Common practice, no source. */
const ALTERNATOR_EFFICIENCY = 0.85;

/** Heat in a US gallon, Btu: US EIA, gasoline 2021 and propane (Monthly Energy Review). */
const BTU_PER_GALLON = { gasoline: 120_238, propane: 91_452 };

/** Litres an hour for each rated kW with no load, and for each delivered kWh. */
const DEFAULT_PER_KW: Readonly<Record<Fuel, readonly [noLoad: number, perKWh: number]>> = {
  gasoline: gasolinePerKW(1),
  // Skarstein & Uhlen 1989, Wind Engineering 13:72: electric output of diesel sets (coefficients from memory).
  diesel: [0.08415, 0.246],
  propane: gasolinePerKW(BTU_PER_GALLON.gasoline / BTU_PER_GALLON.propane),
};

/** The line through the engine's quarter and full load, over the alternator's efficiency. */
function gasolinePerKW(litresForOne: number): readonly [number, number] {
  const quarter = 0.25 * gasolineEngineLPerKWh(0.25);
  const full = gasolineEngineLPerKWh(1);
  const slope = (full - quarter) / 0.75;
  const scale = litresForOne / ALTERNATOR_EFFICIENCY;
  return [(full - slope) * scale, slope * scale];
}

/** The line that stands in for a generator whose fuel use nobody wrote down; errs towards more fuel. */
export function defaultFuelLine(fuel: Fuel, ratedW: number): FuelLine {
  const [noLoad, litresPerKWh] = DEFAULT_PER_KW[fuel];
  return { noLoadLPerHour: (noLoad * ratedW) / 1000, litresPerKWh };
}

/** The line of a generator: through what its label says at half and full load, or the default. */
export function fuelLineOf({ fuel, fuelUse, ratedW }: GeneratorSpec): FuelLine {
  if (fuelUse === undefined) return defaultFuelLine(fuel, ratedW);
  const { halfLoadLPerHour, fullLoadLPerHour } = fuelUse;
  return {
    noLoadLPerHour: 2 * halfLoadLPerHour - fullLoadLPerHour,
    litresPerKWh: (fullLoadLPerHour - halfLoadLPerHour) / (ratedW / 2000),
  };
}

/** Litres for `hours` of running in which `kWh` were delivered: the line makes the order of loads indifferent. */
export function fuelUsedL(line: FuelLine, hours: number, kWh: number): number {
  return line.noLoadLPerHour * hours + line.litresPerKWh * kWh;
}

/**
 * Days that fuel on hand lasts, when the generator runs so many hours a day at a steady load.
 *
 * @param meanW delivered while it runs, ≥ 0
 * @returns Infinity when it never runs
 */
export function fuelDays(line: FuelLine, fuelL: number, hoursPerDay: number, meanW: number): number {
  return fuelL / fuelUsedL(line, hoursPerDay, (hoursPerDay * meanW) / 1000);
}
