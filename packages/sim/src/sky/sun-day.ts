/** The sun over a site through one UTC day, minute by minute. */
import { cosDeg, sinDeg } from './angles.ts';
import { apparentSun } from './apparent-sun.ts';
import { extraterrestrialNormalWm2 } from './extraterrestrial.ts';
import type { SkySite } from './site.ts';
import { planeNormal, sunDirectionOver } from './sun-direction.ts';
import type { Plane } from './sun-direction.ts';
import { fromSurface } from './sun-position.ts';

export const MINUTES_PER_DAY = 1440;

/** One value for the middle of each minute of a UTC day, 1440 each. */
export interface SunDay {
  /** The sun's direction: see `SunDirection`. `up` is the cosine of the zenith angle, without refraction. */
  readonly east: Float32Array;
  readonly north: Float32Array;
  readonly up: Float32Array;
  /** W/m² on a plane facing the sun, above the air. */
  readonly extraterrestrialNormalWm2: Float32Array;
}

/**
 * The ephemeris is asked at 0 h, 12 h and 24 h and its slow parts (declination, equation of time, distance) taken
 * along the parabola through the three: within 0.00001° of asking every minute.
 *
 * @param utcDay whole days since 1970-01-01.
 */
export function computeSunDay(site: SkySite, utcDay: number): SunDay {
  const start = utcDay * MINUTES_PER_DAY;
  const [early, noon, late] = [0, 720, 1440].map((minute) => apparentSun(start + minute)) as [Sun, Sun, Sun];
  const declination = parabola(early.declinationDeg, noon.declinationDeg, late.declinationDeg);
  const equation = parabola(
    early.equationOfTimeMinutes,
    noon.equationOfTimeMinutes,
    late.equationOfTimeMinutes,
  );
  const distance = parabola(early.radiusVectorAu, noon.radiusVectorAu, late.radiusVectorAu);
  const sinLatitude = sinDeg(site.latitudeDeg);
  const cosLatitude = cosDeg(site.latitudeDeg);
  const day = emptyDay();
  for (let minute = 0; minute < MINUTES_PER_DAY; minute++) {
    const x = (minute + 0.5) / 720 - 1;
    const solarMinute = minute + 0.5 + at(equation, x) + 4 * site.longitudeDeg;
    const hourAngleDeg = (solarMinute - 720) / 4;
    const radiusVectorAu = at(distance, x);
    const fromCentre = sunDirectionOver(sinLatitude, cosLatitude, at(declination, x), hourAngleDeg);
    const sun = fromSurface(fromCentre, radiusVectorAu);
    day.east[minute] = sun.east;
    day.north[minute] = sun.north;
    day.up[minute] = sun.up;
    day.extraterrestrialNormalWm2[minute] = extraterrestrialNormalWm2(radiusVectorAu);
  }
  return day;
}

/** Cosine of incidence on a plane for each minute of the day; 0 with the sun behind the plane. */
export function computePlaneDay(day: SunDay, plane: Plane): Float32Array {
  const { east, north, up } = planeNormal(plane);
  const cosIncidence = new Float32Array(MINUTES_PER_DAY);
  for (let minute = 0; minute < MINUTES_PER_DAY; minute++) {
    const cosine = day.east[minute]! * east + day.north[minute]! * north + day.up[minute]! * up;
    cosIncidence[minute] = cosine > 0 ? cosine : 0;
  }
  return cosIncidence;
}

type Sun = ReturnType<typeof apparentSun>;
type Parabola = readonly [number, number, number];

/** Through the values at x = -1, 0 and 1. */
function parabola(before: number, middle: number, after: number): Parabola {
  return [middle, (after - before) / 2, (after + before) / 2 - middle];
}

function at([constant, slope, bend]: Parabola, x: number): number {
  return constant + x * (slope + x * bend);
}

function emptyDay(): SunDay {
  return {
    east: new Float32Array(MINUTES_PER_DAY),
    north: new Float32Array(MINUTES_PER_DAY),
    up: new Float32Array(MINUTES_PER_DAY),
    extraterrestrialNormalWm2: new Float32Array(MINUTES_PER_DAY),
  };
}
