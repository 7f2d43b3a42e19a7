/** The sun over the 8,760 hours of a weather year. */
import { cosDeg, sinDeg } from '../sky/angles.ts';
import { apparentSun } from '../sky/apparent-sun.ts';
import { extraterrestrialNormalWm2 } from '../sky/extraterrestrial.ts';
import type { SkySite } from '../sky/site.ts';
import { sunDirectionOver } from '../sky/sun-direction.ts';
import { DAYS_PER_YEAR } from './calendar.ts';

/** A typical year's months come from many calendar years; 2002 lies midway between leap days. */
const NOMINAL_FIRST_DAY = Date.UTC(2002, 0, 1) / 86_400_000;
const POINTS_PER_HOUR = 12;

/** 8,760 values each, in the year's own standard time. */
export interface YearSun {
  /** Mean cosine of the zenith angle over each hour, 0 with the sun down. */
  readonly cosZenith: Float64Array;
  /** Mean extraterrestrial irradiance on the level over each hour, W/m². */
  readonly aboveWm2: Float64Array;
}

/** Hours by twelve points each; declination and equation of time on a straight line from midnight to midnight. */
export function yearSun(site: SkySite, utcOffsetHours: number): YearSun {
  const cosZenith = new Float64Array(24 * DAYS_PER_YEAR);
  const aboveWm2 = new Float64Array(24 * DAYS_PER_YEAR);
  const sinLatitude = sinDeg(site.latitudeDeg);
  const cosLatitude = cosDeg(site.latitudeDeg);
  const midnight = (day: number): number => (NOMINAL_FIRST_DAY + day) * 1440 - 60 * utcOffsetHours;
  let sun = apparentSun(midnight(0));
  for (let day = 0; day < DAYS_PER_YEAR; day++) {
    const next = apparentSun(midnight(day + 1));
    const firstHourAngleDeg = sun.greenwichHourAngleDeg + site.longitudeDeg;
    const driftDeg = (next.equationOfTimeMinutes - sun.equationOfTimeMinutes) / 4;
    const normalWm2 = extraterrestrialNormalWm2((sun.radiusVectorAu + next.radiusVectorAu) / 2);
    for (let point = 0; point < 24 * POINTS_PER_HOUR; point++) {
      const share = (point + 0.5) / (24 * POINTS_PER_HOUR);
      const declinationDeg = sun.declinationDeg + share * (next.declinationDeg - sun.declinationDeg);
      const hourAngleDeg = firstHourAngleDeg + share * (360 + driftDeg);
      const { up } = sunDirectionOver(sinLatitude, cosLatitude, declinationDeg, hourAngleDeg);
      if (up > 0) cosZenith[24 * day + Math.floor(point / POINTS_PER_HOUR)]! += up / POINTS_PER_HOUR;
    }
    for (let hour = 24 * day; hour < 24 * day + 24; hour++) aboveWm2[hour] = cosZenith[hour]! * normalWm2;
    sun = next;
  }
  return { cosZenith, aboveWm2 };
}
