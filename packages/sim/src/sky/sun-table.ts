/** The sun over one site, worked out once per day and copied into every draw that needs it. */
import type { SkySite } from './site.ts';
import type { Plane } from './sun-direction.ts';
import { computePlaneDay, computeSunDay, MINUTES_PER_DAY } from './sun-day.ts';
import type { SunDay } from './sun-day.ts';

/**
 * Days of sun, each computed when first asked for and kept: about 23 KB a day and 6 KB for each plane. A cache only:
 * the same question has the same answer whatever was asked before.
 */
export interface SunTable {
  readonly site: SkySite;
  /** @param utcDay whole days since 1970-01-01. */
  day(utcDay: number): SunDay;
  /** Cosine of incidence on the plane, one value for the middle of each minute; 0 with the sun behind it. */
  planeDay(plane: Plane, utcDay: number): Float32Array;
}

/**
 * The sun of one outage: one value per minute from its start, taken at the middle of the minute.
 * `cosZenith` is of the sun's centre without refraction (as daily and hourly clearness are defined), below 0 at night;
 * it is the sine of the elevation, so "darker than 3° of elevation" is `cosZenith < sin 3°`.
 */
export interface SunTrack {
  minutes: number;
  readonly cosZenith: Float32Array;
  /** W/m² on a plane facing the sun, above the air; given at night too. */
  readonly extraterrestrialNormalWm2: Float32Array;
  /** Cosine of incidence on each plane, in the order of the planes given; 0 with the sun behind it. */
  readonly planes: readonly Float32Array[];
  readonly daylight: Daylight;
}

/** Stretches of minutes with the sun up: stretch s covers `from[s]` up to, not including, `to[s]`. */
export interface Daylight {
  count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export function createSunTable(site: SkySite): SunTable {
  const days = new Map<number, SunDay>();
  const planeDays = new Map<string, Map<number, Float32Array>>();
  const day = (utcDay: number): SunDay => keep(days, utcDay, () => computeSunDay(site, utcDay));
  const planeDay = (plane: Plane, utcDay: number): Float32Array => {
    const ofPlane = keep(
      planeDays,
      `${plane.tiltDeg} ${plane.azimuthDeg}`,
      () => new Map<number, Float32Array>(),
    );
    return keep(ofPlane, utcDay, () => computePlaneDay(day(utcDay), plane));
  };
  return { site, day, planeDay };
}

/** An empty track, to be filled again and again. @param minutes the longest outage it can hold. */
export function createSunTrack(minutes: number, planeCount: number): SunTrack {
  return {
    minutes,
    cosZenith: new Float32Array(minutes),
    extraterrestrialNormalWm2: new Float32Array(minutes),
    planes: Array.from({ length: planeCount }, () => new Float32Array(minutes)),
    daylight: { count: 0, from: new Int32Array(daylights(minutes)), to: new Int32Array(daylights(minutes)) },
  };
}

/** Most stretches of daylight: the sun rises once in a day and a bit. */
const daylights = (minutes: number): number => Math.ceil(minutes / 720) + 2;

/**
 * Copies the days of an outage into `out`; only days never asked for before cost more than a copy.
 *
 * @param startEpochMinute whole UTC minutes since 1970-01-01T00:00.
 * @param minutes 1…the length of the arrays in `out`; `out.minutes` is set to it, the rest left alone.
 */
export function fillSunTrack(
  table: SunTable,
  planes: readonly Plane[],
  startEpochMinute: number,
  minutes: number,
  out: SunTrack,
): void {
  out.minutes = minutes;
  for (let filled = 0; filled < minutes;) {
    const utcDay = Math.floor((startEpochMinute + filled) / MINUTES_PER_DAY);
    const from = startEpochMinute + filled - utcDay * MINUTES_PER_DAY;
    const to = Math.min(MINUTES_PER_DAY, from + minutes - filled);
    const day = table.day(utcDay);
    out.cosZenith.set(day.up.subarray(from, to), filled);
    out.extraterrestrialNormalWm2.set(day.extraterrestrialNormalWm2.subarray(from, to), filled);
    planes.forEach((plane, index) => {
      out.planes[index]!.set(table.planeDay(plane, utcDay).subarray(from, to), filled);
    });
    filled += to - from;
  }
  findDaylight(out);
}

function findDaylight({ minutes, cosZenith, daylight }: SunTrack): void {
  daylight.count = 0;
  for (let m = 0; m < minutes;) {
    while (m < minutes && !(cosZenith[m]! > 0)) m++;
    if (m === minutes) return;
    daylight.from[daylight.count] = m;
    while (m < minutes && cosZenith[m]! > 0) m++;
    daylight.to[daylight.count++] = m;
  }
}

function keep<Key, Value>(kept: Map<Key, Value>, key: Key, make: () => Value): Value {
  const found = kept.get(key);
  if (found !== undefined) return found;
  const made = make();
  kept.set(key, made);
  return made;
}
