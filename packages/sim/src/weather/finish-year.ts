/** From a weather file taken apart to a weather year that can be relied on. */
import type { WeatherYear } from '../scenario/scenario.ts';
import { zoneOffsetMinutes } from '../clock/zone-offset.ts';
import { acosDeg, cosDeg, sinDeg } from '../sky/angles.ts';
import { checkBounds, checkAgainstSun } from './check-bounds.ts';
import { completeIrradiance } from './complete-irradiance.ts';
import { fillGaps } from './fill-gaps.ts';
import { settleHours } from './settle-hours.ts';
import type { RawYear } from './raw-year.ts';
import { isFault } from './weather-finding.ts';
import type { WeatherFinding } from './weather-finding.ts';
import { yearSun } from './year-sun.ts';

/** The site's own figures, for what a file leaves out. */
export interface WeatherYearDefaults {
  /** Standard time, without daylight saving; or the IANA zone to take it from. */
  readonly utcOffsetHours?: number | undefined;
  readonly timeZone?: string | undefined;
  readonly latitudeDeg?: number | undefined;
  readonly longitudeDeg?: number | undefined;
  readonly windMs?: number | undefined;
}

export interface FinishedYear {
  /** Undefined when a finding is a fault. */
  readonly year: WeatherYear | undefined;
  readonly findings: readonly WeatherFinding[];
}

const CALM_DAY_MS = 3;
/** Weather changes over less than this where there are mountains or a coast; common practice, no source. */
const FAR_AWAY_KM = 150;
const KM_PER_DEGREE = 111.2;

/** Every fault is looked for before any is reported. Changes nothing in `raw`. */
export function finishYear(raw: RawYear, defaults: WeatherYearDefaults): FinishedYear {
  const findings = [...raw.findings];
  const settled = settleHours(raw, findings);
  const { columns } = settled;
  checkBounds(settled, findings);
  const utcOffsetHours =
    raw.utcOffsetHours ?? defaults.utcOffsetHours ?? standardOffsetHours(defaults.timeZone);
  if (utcOffsetHours === undefined) findings.push({ code: 'no-utc-offset' });
  else if (raw.utcOffsetHours === undefined)
    findings.push({ code: 'utc-offset-assumed', found: utcOffsetHours });
  if (columns.wind.every(Number.isNaN)) {
    const windMs = defaults.windMs ?? CALM_DAY_MS;
    findings.push({ code: 'wind-assumed', found: windMs });
    columns.wind.fill(windMs);
  }
  if (findings.some((finding) => finding.code === 'wrong-length')) return { year: undefined, findings };
  fillGaps(settled, findings);
  const latitudeDeg = raw.latitudeDeg ?? defaults.latitudeDeg;
  const longitudeDeg = raw.longitudeDeg ?? defaults.longitudeDeg;
  const placed = latitudeDeg !== undefined && longitudeDeg !== undefined && utcOffsetHours !== undefined;
  const sun = placed ? yearSun({ latitudeDeg, longitudeDeg }, utcOffsetHours) : undefined;
  if (sun !== undefined) checkAgainstSun(settled, sun, findings);
  completeIrradiance(columns, sun, findings);
  if (sun !== undefined && raw.latitudeDeg === undefined) findings.push({ code: 'location-assumed' });
  const awayKm = distanceKm(raw, defaults);
  if (awayKm > FAR_AWAY_KM) findings.push({ code: 'far-away', found: Math.round(awayKm) });
  if (findings.some(isFault) || utcOffsetHours === undefined) return { year: undefined, findings };
  const { ghi, dni, dhi, dryBulb, wind } = columns;
  const series = { ghiWm2: ghi, dniWm2: dni, dhiWm2: dhi, dryBulbC: dryBulb, windMs: wind };
  return { year: { name: raw.name, utcOffsetHours, latitudeDeg, longitudeDeg, ...series }, findings };
}

/** The lesser of the offsets of January and July: clocks go forward in summer, on either half of the Earth. */
function standardOffsetHours(timeZone: string | undefined): number | undefined {
  if (timeZone === undefined) return undefined;
  const offsets = [0, 6].map((month) => zoneOffsetMinutes(timeZone, Date.UTC(2025, month, 1) / 60_000));
  return Math.min(...offsets) / 60;
}

interface Place {
  readonly latitudeDeg?: number | undefined;
  readonly longitudeDeg?: number | undefined;
}

/** Along the Earth's surface; 0 when either place is not known. */
function distanceKm(a: Place, b: Place): number {
  const [fromDeg, toDeg] = [a.latitudeDeg, b.latitudeDeg];
  if (
    fromDeg === undefined ||
    toDeg === undefined ||
    a.longitudeDeg === undefined ||
    b.longitudeDeg === undefined
  )
    return 0;
  const apart = cosDeg(a.longitudeDeg - b.longitudeDeg);
  return KM_PER_DEGREE * acosDeg(sinDeg(fromDeg) * sinDeg(toDeg) + cosDeg(fromDeg) * cosDeg(toDeg) * apart);
}
