/** From a weather file taken apart to a weather year that can be relied on. */
import type { WeatherYear } from '../scenario/scenario.ts';
import { standardOffsetHours } from '../clock/standard-offset.ts';
import { checkBounds, checkAgainstSun } from './check-bounds.ts';
import { completeIrradiance } from './complete-irradiance.ts';
import { fillGaps } from './fill-gaps.ts';
import { settleHours } from './settle-hours.ts';
import { farAwayKm } from './places-apart.ts';
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

/** Every fault is looked for before any is reported. Changes nothing in `raw`. */
export function finishYear(raw: RawYear, defaults: WeatherYearDefaults): FinishedYear {
  const findings = [...raw.findings];
  const settled = settleHours(raw, findings);
  const { columns } = settled;
  checkBounds(settled, findings);
  const utcOffsetHours =
    raw.utcOffsetHours ??
    defaults.utcOffsetHours ??
    (defaults.timeZone === undefined ? undefined : standardOffsetHours(defaults.timeZone));
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
  const awayKm = farAwayKm(raw, defaults);
  if (awayKm !== undefined) findings.push({ code: 'far-away', found: awayKm });
  if (findings.some(isFault) || utcOffsetHours === undefined) return { year: undefined, findings };
  const { ghi, dni, dhi, dryBulb, wind } = columns;
  const series = { ghiWm2: ghi, dniWm2: dni, dhiWm2: dhi, dryBulbC: dryBulb, windMs: wind };
  return { year: { name: raw.name, utcOffsetHours, latitudeDeg, longitudeDeg, ...series }, findings };
}
