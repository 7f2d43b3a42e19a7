/** Many days of sun end to end, so that an outage's minutes are a window onto them and no copy. */
import type { Plane } from './sun-direction.ts';
import { MINUTES_PER_DAY, type SunDay } from './sun-day.ts';

/** Stretches of minutes with the sun up: stretch s covers `from[s]` up to, not including, `to[s]`. */
export interface Daylight {
  count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** One value for the middle of each minute of `days` UTC days from `firstDay`. */
export interface SunStrip {
  readonly firstDay: number;
  readonly days: number;
  readonly up: Float32Array;
  readonly extraterrestrialNormalWm2: Float32Array;
  /** Cosine of incidence on each plane, in the order of the planes given. */
  readonly planes: readonly Float32Array[];
  /** In minutes since the strip's start. */
  readonly daylight: Daylight;
}

/** Where a strip's days come from. */
export interface SunDays {
  day(utcDay: number): SunDay;
  planeDay(plane: Plane, utcDay: number): Float32Array;
}

/** Strips begin and end at whole stretches of this many days, so that they seldom grow. */
const STEP_DAYS = 16;
/** A strip grows to take in further days unless it became longer than this; then it is begun anew. */
const MOST_DAYS = 800;

/** A strip that covers the days from `firstDay` to `lastDay`: the given one, or a new one that covers its days as well. */
export function stripOver(
  source: SunDays,
  planes: readonly Plane[],
  firstDay: number,
  lastDay: number,
  strip: SunStrip | undefined,
): SunStrip {
  const end = strip === undefined ? -Infinity : strip.firstDay + strip.days;
  if (strip !== undefined && firstDay >= strip.firstDay && lastDay < end) return strip;
  const from = STEP_DAYS * Math.floor(firstDay / STEP_DAYS);
  const to = STEP_DAYS * Math.ceil((lastDay + 1) / STEP_DAYS);
  const unionFrom = Math.min(from, strip?.firstDay ?? from);
  const unionTo = Math.max(to, end);
  return unionTo - unionFrom <= MOST_DAYS
    ? createStrip(source, planes, unionFrom, unionTo - unionFrom)
    : createStrip(source, planes, from, to - from);
}

function createStrip(source: SunDays, planes: readonly Plane[], firstDay: number, days: number): SunStrip {
  const joined = (ofDay: (utcDay: number) => Float32Array): Float32Array => {
    const all = new Float32Array(days * MINUTES_PER_DAY);
    for (let d = 0; d < days; d++) all.set(ofDay(firstDay + d), d * MINUTES_PER_DAY);
    return all;
  };
  const up = joined((utcDay) => source.day(utcDay).up);
  return {
    firstDay,
    days,
    up,
    extraterrestrialNormalWm2: joined((utcDay) => source.day(utcDay).extraterrestrialNormalWm2),
    planes: planes.map((plane) => joined((utcDay) => source.planeDay(plane, utcDay))),
    daylight: daylightOf(up),
  };
}

function daylightOf(up: Float32Array): Daylight {
  const from: number[] = [];
  const to: number[] = [];
  for (let m = 0; m < up.length; m++) {
    if (up[m]! > 0 && !(m > 0 && up[m - 1]! > 0)) from.push(m);
    if (up[m]! > 0 && !(m + 1 < up.length && up[m + 1]! > 0)) to.push(m + 1);
  }
  return { count: from.length, from: Int32Array.from(from), to: Int32Array.from(to) };
}

/** The daylight of the minutes from `from` up to `to` of a strip, in minutes since `from`. */
export function cutDaylight(all: Daylight, from: number, to: number, out: Daylight): void {
  out.count = 0;
  for (let s = 0; s < all.count && all.from[s]! < to; s++) {
    if (all.to[s]! <= from) continue;
    out.from[out.count] = Math.max(all.from[s]!, from) - from;
    out.to[out.count++] = Math.min(all.to[s]!, to) - from;
  }
}
