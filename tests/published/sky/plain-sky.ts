/** The plain sky of textbook examples: equally bright all over, its diffuse share by the month. */
import type { PlaneView } from '../../../packages/sim/src/sky/plane-of-array.ts';

const WINTER_SUNSET_DEG = 81.4;

/** Share of a month's mean day that is diffuse: Erbs, Klein & Duffie 1982; Duffie & Beckman §2.12; fitted for 0.3 ≤ clearness ≤ 0.8. */
export function monthlyDiffuseFraction(clearness: number, sunsetHourAngleDeg: number): number {
  const k = Math.min(0.8, Math.max(0.3, clearness));
  if (sunsetHourAngleDeg <= WINTER_SUNSET_DEG) return 1.391 + k * (-3.56 + k * (4.189 + k * -2.137));
  return 1.311 + k * (-3.022 + k * (3.427 + k * -1.821));
}

/** Isotropic sky (Liu & Jordan 1963; Duffie & Beckman eq. 2.15.1), W/m². */
export function isotropicPlaneWm2(
  ghiWm2: number,
  dhiWm2: number,
  beamRatioOfPlane: number,
  view: PlaneView,
  groundReflectance: number,
): number {
  return (
    (ghiWm2 - dhiWm2) * beamRatioOfPlane +
    dhiWm2 * view.skyFraction +
    ghiWm2 * groundReflectance * view.groundFraction
  );
}
