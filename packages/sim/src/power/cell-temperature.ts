/** How warm a solar panel's cells get. */

/**
 * °C. Faiman 2008, Progress in Photovoltaics 16:307: T = Ta + G / (U0 + U1·wind). His fit over seven kinds of panel on
 * open racks: U0 25 W/m²K (23.5 to 26.5), U1 6.84 W·s/m³K (6.25 to 7.68); panels close to a roof lose less heat.
 * It is the back of the panel; the cells themselves are 1 to 3 °C warmer in full sun (common practice, no source).
 *
 * @param planeWm2 irradiance on the panel, ≥ 0.
 * @param windMs ≥ 0.
 */
export function faimanCellC(
  planeWm2: number,
  dryBulbC: number,
  windMs: number,
  u0: number,
  u1: number,
): number {
  return dryBulbC + planeWm2 / (u0 + u1 * windMs);
}
