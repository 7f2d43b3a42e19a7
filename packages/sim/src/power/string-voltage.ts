/** How high the voltage of a string of panels rises in the cold, and how low it falls in the heat. MODEL.md §11.7. */

/** Rows of the code's table: down to this ambient temperature, °C, open-circuit voltage is taken times the factor. */
const TABLE_690_7_A: readonly (readonly [downToC: number, factor: number])[] = [
  [20, 1.02],
  [15, 1.04],
  [10, 1.06],
  [5, 1.08],
  [0, 1.1],
  [-5, 1.12],
  [-10, 1.14],
  [-15, 1.16],
  [-20, 1.18],
  [-25, 1.2],
  [-30, 1.21],
  [-35, 1.23],
  [-40, 1.25],
];
const RATED_C = 25;

/**
 * Correction of open-circuit voltage for crystalline and multicrystalline silicon: NEC 2017–2023, Table 690.7(A).
 *
 * @param ambientC lowest expected ambient temperature, °C; the table's rows are whole degrees, so 4.5 °C takes the
 *   colder row.
 * @returns the factor; 1 from 25 °C up
 * @throws RangeError below -40 °C, where the table ends, and for NaN
 */
export function coldVoltageFactor(ambientC: number): number {
  if (Number.isNaN(ambientC))
    throw new RangeError('ambientC: found NaN; expected the lowest temperature of the air, °C');
  const degrees = Math.floor(ambientC);
  if (degrees >= RATED_C) return 1;
  const row = TABLE_690_7_A.find(([downToC]) => degrees >= downToC);
  if (row === undefined) throw new RangeError(`the table of cold voltages ends at -40 °C; got ${ambientC}`);
  return row[1];
}

/**
 * Voltage of a string by the panel's own coefficient, V: n · V · (1 + β · (T - 25)).
 *
 * @param ratedV of one panel at 25 °C: open circuit, or at maximum power
 * @param perC β of that voltage, relative change per °C, < 0; a data sheet's -0.27 %/°C is -0.0027
 * @param cellC of the cells: at dawn that of the air, in full sun well above it
 */
export function stringV(ratedV: number, perC: number, cellC: number, inSeries: number): number {
  return inSeries * ratedV * (1 + perC * (cellC - RATED_C));
}

/** Open-circuit voltage of a string in the cold, V: cells at dawn are as cold as the air. */
export function coldStringV(openCircuitV: number, perC: number, ambientC: number, inSeries: number): number {
  return stringV(openCircuitV, perC, ambientC, inSeries);
}

/** Most panels in series whose string stays within the input's limit at `coldPanelV` each. */
export function mostInSeries(inputLimitV: number, coldPanelV: number): number {
  return Math.floor(inputLimitV / coldPanelV);
}

/** Fewest panels in series whose string keeps the input's least voltage at `hotPanelV` each. */
export function fewestInSeries(inputLeastV: number, hotPanelV: number): number {
  return Math.ceil(inputLeastV / hotPanelV);
}
