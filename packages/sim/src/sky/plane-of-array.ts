/** What falls on a tilted plane. */
import { cosDeg, sinDeg } from './angles.ts';
import type { SunTrack } from './sun-table.ts';

/** What a plane sees, from its tilt alone. */
export interface PlaneView {
  /** Share of the sky, 0…1. */
  readonly skyFraction: number;
  /** Share of the ground, 0…1. */
  readonly groundFraction: number;
  /** sin³(tilt / 2): weight of the bright band above the horizon. */
  readonly horizonWeight: number;
}

/** Duffie & Beckman eqs. 2.15.1 and 2.16.6. */
export function planeView(tiltDeg: number): PlaneView {
  const half = sinDeg(tiltDeg / 2);
  return {
    skyFraction: (1 + cosDeg(tiltDeg)) / 2,
    groundFraction: (1 - cosDeg(tiltDeg)) / 2,
    horizonWeight: half * half * half,
  };
}

/**
 * Cosine of 85°. Beam on the plane is beam on the level × cos incidence / cos zenith, and near the horizon that ratio
 * grows without bound: a few watts of error in the diffuse split would become kilowatts. Below 5° of elevation the
 * zenith cosine is held here, as Perez et al. 1990 (Solar Energy 44:271) do for the same reason, so the ratio never
 * passes 11.5. It changes a real year on a south roof or an east wall by less than 0.15 % (`tests/published/irradiance.test.ts`).
 */
export const LOW_SUN_COS_ZENITH = 0.08715574274765817;

/** Beam on the plane per beam on the level: Rb, with the low sun held. 0 with the sun behind the plane. */
export function beamRatio(cosIncidence: number, cosZenith: number): number {
  return Math.max(0, cosIncidence) / Math.max(cosZenith, LOW_SUN_COS_ZENITH);
}

/**
 * Anisotropic sky of Hay & Davies, Klucher and Reindl (HDKR; Duffie & Beckman eq. 2.16.7), W/m²: part of the diffuse
 * comes from around the sun and part from a band above the horizon. This is the one the simulator uses.
 *
 * @param extraterrestrialHorizontalWm2 for the share of the diffuse that comes from around the sun.
 */
export function hdkrPlaneWm2(
  ghiWm2: number,
  dhiWm2: number,
  beamRatioOfPlane: number,
  extraterrestrialHorizontalWm2: number,
  view: PlaneView,
  groundReflectance: number,
): number {
  if (ghiWm2 <= 0) return 0;
  const diffuse = dhiWm2 < ghiWm2 ? dhiWm2 : ghiWm2;
  const beam = ghiWm2 - diffuse;
  // beam / extraterrestrial; past 1 (sunlight off a cloud's edge, or a sun already set) it means nothing
  const anisotropy =
    beam < extraterrestrialHorizontalWm2 ? beam / extraterrestrialHorizontalWm2 : beam > 0 ? 1 : 0;
  const horizon = 1 + Math.sqrt(beam / ghiWm2) * view.horizonWeight;
  return (
    (beam + diffuse * anisotropy) * beamRatioOfPlane +
    diffuse * (1 - anisotropy) * view.skyFraction * horizon +
    ghiWm2 * groundReflectance * view.groundFraction
  );
}

/**
 * HDKR for every minute of a track into `out` (W/m², 0 at night). Allocates nothing; arithmetic and `Math.sqrt` only.
 *
 * @param planeIndex position of the plane in `track.planes`; `view` is that plane's.
 * @param ghiWm2 one value a minute, as `dhiWm2` and `out`; at least `track.minutes` long. Not read at night.
 */
export function fillPlaneIrradiance(
  track: SunTrack,
  planeIndex: number,
  view: PlaneView,
  ghiWm2: Float32Array,
  dhiWm2: Float32Array,
  groundReflectance: number,
  out: Float32Array,
): void {
  const { minutes, cosZenith, extraterrestrialNormalWm2, daylight } = track;
  const cosIncidence = track.planes[planeIndex]!;
  out.fill(0, 0, minutes);
  for (let s = 0; s < daylight.count; s++) {
    const to = daylight.to[s]!;
    for (let m = daylight.from[s]!; m < to; m++) {
      const up = cosZenith[m]!;
      const ratio = beamRatio(cosIncidence[m]!, up);
      const horizontal = extraterrestrialNormalWm2[m]! * up;
      out[m] = hdkrPlaneWm2(ghiWm2[m]!, dhiWm2[m]!, ratio, horizontal, view, groundReflectance);
    }
  }
}
