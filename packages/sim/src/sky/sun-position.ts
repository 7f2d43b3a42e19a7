/** Where the sun stands over a site at an instant. */
import { acosDeg, atan2Deg, fullTurn, halfTurn } from './angles.ts';
import { apparentSun } from './apparent-sun.ts';
import { refractionDeg, standardPressureHPa } from './refraction.ts';
import type { SkySite } from './site.ts';
import { sunDirection } from './sun-direction.ts';
import type { SunDirection } from './sun-direction.ts';

/** Degrees throughout. */
export interface SunPosition {
  /** From straight up to the sun's centre, as if there were no air. */
  readonly zenithDeg: number;
  /** The same as seen through the air. */
  readonly refractedZenithDeg: number;
  /** Clockwise from north, 0…360. */
  readonly azimuthDeg: number;
  readonly declinationDeg: number;
  /** Since local solar noon, 15° an hour, -180…180. */
  readonly hourAngleDeg: number;
  readonly radiusVectorAu: number;
  readonly equationOfTimeMinutes: number;
}

export interface AirState {
  readonly pressureHPa: number;
  readonly airC: number;
}

/** The sun's parallax at 1 au: 8.794″ (Meeus ch. 40), as a ratio of Earth's radius to its distance. */
const PARALLAX = 4.2635e-5;

/** Moves a direction from the Earth's centre to its surface: the sun stands up to 0.0024° lower. */
export function fromSurface(sun: SunDirection, radiusVectorAu: number): SunDirection {
  const shift = PARALLAX / radiusVectorAu;
  const stretch = 1 + shift * sun.up;
  return { east: sun.east * stretch, north: sun.north * stretch, up: sun.up * stretch - shift };
}

/**
 * Within 0.01° from 1950 to 2100 (`tests/published/sun.test.ts`).
 *
 * @param epochMinute UTC minutes since 1970-01-01T00:00, fractions allowed.
 * @param air for the refraction; left out: standard pressure at the site's elevation, 10 °C.
 */
export function sunPosition(epochMinute: number, site: SkySite, air?: AirState): SunPosition {
  const { declinationDeg, radiusVectorAu, greenwichHourAngleDeg, equationOfTimeMinutes } =
    apparentSun(epochMinute);
  const hourAngleDeg = halfTurn(greenwichHourAngleDeg + site.longitudeDeg);
  const sun = fromSurface(sunDirection(site.latitudeDeg, declinationDeg, hourAngleDeg), radiusVectorAu);
  const zenithDeg = acosDeg(sun.up);
  const pressureHPa = air?.pressureHPa ?? standardPressureHPa(site.elevationM ?? 0);
  return {
    zenithDeg,
    refractedZenithDeg: zenithDeg - refractionDeg(90 - zenithDeg, pressureHPa, air?.airC ?? 10),
    azimuthDeg: fullTurn(atan2Deg(sun.east, sun.north)),
    declinationDeg,
    hourAngleDeg,
    radiusVectorAu,
    equationOfTimeMinutes,
  };
}
