/** When the sun comes up and goes down, by our own sun: what almanacs can be held against. */
import { fullTurn, halfTurn } from '../../../packages/sim/src/sky/angles.ts';
import { apparentSun } from '../../../packages/sim/src/sky/apparent-sun.ts';
import { SUNRISE_DEPRESSION_DEG } from '../../../packages/sim/src/sky/refraction.ts';
import type { SkySite } from '../../../packages/sim/src/sky/site.ts';
import { sunPosition } from '../../../packages/sim/src/sky/sun-position.ts';

/** Times in UTC minutes since 1970-01-01T00:00, with fractions. */
export interface SunTimes {
  /** First sunrise in the span, or null: see `what`. */
  readonly sunriseEpochMinute: number | null;
  /** First sunset in the span, or null: see `what`. */
  readonly sunsetEpochMinute: number | null;
  /** Why a time is missing: polar day, polar night, or a span (a polar spring evening, say) that holds only one. */
  readonly what: 'rises and sets' | 'rises only' | 'sets only' | 'up throughout' | 'down throughout';
}

/**
 * Sunrise and sunset in a span of time, usually a local civil day: it is the caller's to say where that day begins.
 * The upper edge on a level horizon with average refraction: the centre at -0.8333°. Real hills, and air that
 * bends more or less, move it by minutes.
 *
 * @param fromEpochMinute start of the span. @param minutes its length; left out: 1440.
 */
export function sunTimes(site: SkySite, fromEpochMinute: number, minutes = 1440): SunTimes {
  const heightDeg = (epochMinute: number): number =>
    90 - sunPosition(epochMinute, site).zenithDeg + SUNRISE_DEPRESSION_DEG;
  const edges = spanEdges(site, fromEpochMinute, minutes);
  let sunrise: number | null = null;
  let sunset: number | null = null;
  for (let i = 1; i < edges.length; i++) {
    const upBefore = heightDeg(edges[i - 1]!) > 0;
    const upAfter = heightDeg(edges[i]!) > 0;
    if (!upBefore && upAfter) sunrise ??= crossing(heightDeg, edges[i - 1]!, edges[i]!);
    if (upBefore && !upAfter) sunset ??= crossing(heightDeg, edges[i - 1]!, edges[i]!);
  }
  return {
    sunriseEpochMinute: sunrise,
    sunsetEpochMinute: sunset,
    what: whatHappened(sunrise, sunset, heightDeg(fromEpochMinute) > 0),
  };
}

function whatHappened(sunrise: number | null, sunset: number | null, upAtStart: boolean): SunTimes['what'] {
  if (sunrise !== null) return sunset !== null ? 'rises and sets' : 'rises only';
  if (sunset !== null) return 'sets only';
  return upAtStart ? 'up throughout' : 'down throughout';
}

/** The span cut at the sun's highest and lowest points, so that it crosses the horizon at most once in each piece. */
function spanEdges(site: SkySite, from: number, minutes: number): number[] {
  const hourAngleDeg = (epochMinute: number): number =>
    halfTurn(apparentSun(epochMinute).greenwichHourAngleDeg + site.longitudeDeg);
  const edges = [from];
  const toNext = (180 - fullTurn(hourAngleDeg(from))) * 4; // minutes to the lowest point; negative: since it
  for (let turn = toNext - 1440; turn < minutes; turn += 720) {
    if (turn > 0) edges.push(from + turn);
  }
  return [...edges, from + minutes];
}

/** Where the height changes sign between two times, to a hundredth of a second. */
function crossing(heightDeg: (epochMinute: number) => number, before: number, after: number): number {
  const upBefore = heightDeg(before) > 0;
  let low = before;
  let high = after;
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (heightDeg(middle) > 0 === upBefore) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
