/** Sunlight above the air. */

/**
 * W/m² at 1 au: the World Radiation Center value, as in Duffie & Beckman and in NREL's SOLPOS.
 * Newer measurement gives 1361.1 (Gueymard 2018). The older is kept on purpose: a clearness index only means something
 * with the constant it was made with, and the climate normals (FAO-56: 0.0820 MJ/m²min = 1366.7 W/m²) and the
 * published clearness and diffuse correlations were made with this one. Multiplied back, the 0.4 % cancels.
 */
export const SOLAR_CONSTANT_WM2 = 1367;

/** W/m² on a plane facing the sun, above the air. */
export function extraterrestrialNormalWm2(radiusVectorAu: number): number {
  return SOLAR_CONSTANT_WM2 / (radiusVectorAu * radiusVectorAu);
}
