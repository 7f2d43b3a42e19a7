/** The sun over the 8,760 hours of a weather year. */
import { createSunTable } from '../sky/sun-table.ts';
import type { SkySite } from '../sky/site.ts';
import { DAYS_PER_YEAR } from './calendar.ts';
import { createDaySkies } from './day-sky.ts';
import type { DaySky } from './day-sky.ts';

/** A typical year's months come from many calendar years; 2002 lies midway between leap days. */
const NOMINAL_FIRST_DAY = Date.UTC(2002, 0, 1) / 86_400_000;

export interface YearSun {
  /** Mean cosine of the zenith angle over each hour, 0 with the sun down. */
  readonly cosZenith: Float64Array;
  /** Mean extraterrestrial irradiance on the level over each hour, W/m². */
  readonly aboveWm2: Float64Array;
}

/** The 365 days of a weather year, in its own standard time. */
export function yearSkies(site: SkySite, utcOffsetHours: number): DaySky[] {
  const skies = createDaySkies(createSunTable(site), Math.round(60 * utcOffsetHours));
  return Array.from({ length: DAYS_PER_YEAR }, (_, day) => skies.day(NOMINAL_FIRST_DAY + day));
}

export function yearSun(site: SkySite, utcOffsetHours: number): YearSun {
  const cosZenith = new Float64Array(24 * DAYS_PER_YEAR);
  const aboveWm2 = new Float64Array(24 * DAYS_PER_YEAR);
  yearSkies(site, utcOffsetHours).forEach(({ hourCosZenith, normalWm2 }, day) => {
    cosZenith.set(hourCosZenith, 24 * day);
    aboveWm2.set(
      hourCosZenith.map((cosine) => cosine * normalWm2),
      24 * day,
    );
  });
  return { cosZenith, aboveWm2 };
}
