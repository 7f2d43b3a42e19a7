/** The sun over one site, worked out once per day and looked at by every draw that needs it. */
import type { SkySite } from './site.ts';
import type { Plane } from './sun-direction.ts';
import { computePlaneDay, computeSunDay, MINUTES_PER_DAY } from './sun-day.ts';
import type { SunDay } from './sun-day.ts';
import { cutDaylight, stripOver } from './sun-strip.ts';
import type { Daylight, SunDays, SunStrip } from './sun-strip.ts';

export type { Daylight } from './sun-strip.ts';

/**
 * Days of sun, each computed when first asked for and kept: about 23 KB a day and 6 KB for each plane, and half as much
 * again end to end. A cache only: the same question has the same answer whatever was asked before.
 */
export interface SunTable extends SunDays {
  readonly site: SkySite;
  /** @param utcDay whole days since 1970-01-01. */
  day(utcDay: number): SunDay;
  /** Cosine of incidence on the plane, one value for the middle of each minute; 0 with the sun behind it. */
  planeDay(plane: Plane, utcDay: number): Float32Array;
  /** Days end to end, at least those asked for. */
  strip(planes: readonly Plane[], firstDay: number, lastDay: number): SunStrip;
}

/**
 * The sun of one outage: one value per minute from its start, taken at the middle of the minute. The arrays are windows
 * onto the table's own: to be read only.
 * `cosZenith` is of the sun's centre without refraction (as daily and hourly clearness are defined), below 0 at night;
 * it is the sine of the elevation, so "darker than 3° of elevation" is `cosZenith < sin 3°`.
 */
export interface SunTrack {
  minutes: number;
  cosZenith: Float32Array;
  /** W/m² on a plane facing the sun, above the air; given at night too. */
  extraterrestrialNormalWm2: Float32Array;
  /** Cosine of incidence on each plane, in the order of the planes given; 0 with the sun behind it. */
  readonly planes: Float32Array[];
  readonly daylight: Daylight;
}

export function createSunTable(site: SkySite): SunTable {
  const days = new Map<number, SunDay>();
  const planeDays = new Map<string, Map<number, Float32Array>>();
  const strips = new Map<string, SunStrip>();
  const day = (utcDay: number): SunDay => keep(days, utcDay, () => computeSunDay(site, utcDay));
  const planeDay = (plane: Plane, utcDay: number): Float32Array => {
    const ofPlane = keep(planeDays, nameOf(plane), () => new Map<number, Float32Array>());
    return keep(ofPlane, utcDay, () => computePlaneDay(day(utcDay), plane));
  };
  const strip = (planes: readonly Plane[], firstDay: number, lastDay: number): SunStrip => {
    const name = planes.map(nameOf).join();
    const found = strips.get(name);
    const covering = stripOver({ day, planeDay }, planes, firstDay, lastDay, found);
    if (covering !== found) strips.set(name, covering);
    return covering;
  };
  return { site, day, planeDay, strip };
}

let latest: SunTable | undefined;

/**
 * The sun over a site that may have been asked for just before, by somebody who has changed something else since: the
 * latest site's table is kept.
 */
export function sunTableOf(site: SkySite): SunTable {
  const { latitudeDeg, longitudeDeg, elevationM } = site;
  const known = latest?.site;
  const isKnown =
    known?.latitudeDeg === latitudeDeg &&
    known.longitudeDeg === longitudeDeg &&
    known.elevationM === elevationM;
  return isKnown ? latest! : (latest = createSunTable({ latitudeDeg, longitudeDeg, elevationM }));
}

const nameOf = ({ tiltDeg, azimuthDeg }: Plane): string => `${tiltDeg} ${azimuthDeg}`;

/** An empty track, to be filled again and again. @param minutes the longest outage it can hold. */
export function createSunTrack(minutes: number, planeCount: number): SunTrack {
  const most = Math.ceil(minutes / 720) + 2; // the sun rises once in a day and a bit
  return {
    minutes: 0,
    cosZenith: new Float32Array(0),
    extraterrestrialNormalWm2: new Float32Array(0),
    planes: Array.from({ length: planeCount }, () => new Float32Array(0)),
    daylight: { count: 0, from: new Int32Array(most), to: new Int32Array(most) },
  };
}

/**
 * Turns `out` to an outage; only days never asked for before cost anything to speak of.
 *
 * @param startEpochMinute whole UTC minutes since 1970-01-01T00:00.
 * @param minutes 1…what `out` was created for.
 */
export function fillSunTrack(
  table: SunTable,
  planes: readonly Plane[],
  startEpochMinute: number,
  minutes: number,
  out: SunTrack,
): void {
  const dayOf = (epochMinute: number): number => Math.floor(epochMinute / MINUTES_PER_DAY);
  const strip = table.strip(planes, dayOf(startEpochMinute), dayOf(startEpochMinute + minutes - 1));
  const from = startEpochMinute - strip.firstDay * MINUTES_PER_DAY;
  const to = from + minutes;
  out.minutes = minutes;
  out.cosZenith = strip.up.subarray(from, to);
  out.extraterrestrialNormalWm2 = strip.extraterrestrialNormalWm2.subarray(from, to);
  for (let p = 0; p < planes.length; p++) out.planes[p] = strip.planes[p]!.subarray(from, to);
  cutDaylight(strip.daylight, from, to, out.daylight);
}

function keep<Key, Value>(kept: Map<Key, Value>, key: Key, make: () => Value): Value {
  const found = kept.get(key);
  if (found !== undefined) return found;
  const made = make();
  kept.set(key, made);
  return made;
}
