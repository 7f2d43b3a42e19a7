/** A weather year as clearness: what stays meaningful when its days are moved to other dates. */
import type { SkySite } from '../sky/site.ts';
import type { WeatherYear } from '../scenario/scenario.ts';
import { DAYS_PER_YEAR } from './calendar.ts';
import type { DaySky } from './day-sky.ts';
import { yearSkies } from './year-sun.ts';

/** 8,760 values each, unless said otherwise. */
export interface YearPlan {
  readonly clearness: Float64Array;
  /** DHI over GHI. */
  readonly diffuseFraction: Float64Array;
  /** At the end of each hour. */
  readonly dryBulbC: Float64Array;
  readonly windMs: Float64Array;
  /** Daily clearness, 365; the dullest days are found by it. */
  readonly dayClearness: Float64Array;
}

/** No hour is clearer; what is above (sun close to the horizon, a clock a few minutes out) goes to the next hour in. */
const CLEAREST_HOUR = 1.1;
/** Clearness of a day without sun, should it be moved to one with some. */
const UNKNOWN_CLEARNESS = 0.4;

/** @param site where the year was measured, if the year does not say. */
export function planYear(year: WeatherYear, site: SkySite): YearPlan {
  const { latitudeDeg = site.latitudeDeg, longitudeDeg = site.longitudeDeg } = year;
  const clearness = new Float64Array(24 * DAYS_PER_YEAR);
  const diffuseFraction = new Float64Array(24 * DAYS_PER_YEAR);
  const dayClearness = new Float64Array(DAYS_PER_YEAR);
  let before = UNKNOWN_CLEARNESS;
  yearSkies({ latitudeDeg, longitudeDeg }, year.utcOffsetHours).forEach((sky, day) => {
    const ghi = Float64Array.from(year.ghiWm2.slice(24 * day, 24 * day + 24));
    carryInwards(ghi, sky);
    fillDay(ghi, year.dhiWm2, sky, day, before, clearness, diffuseFraction);
    const above = sky.dayCosZenith * sky.normalWm2;
    before = above > 0 ? ghi.reduce((sum, value) => sum + value, 0) / above : before;
    dayClearness[day] = before;
  });
  return {
    clearness,
    diffuseFraction,
    dryBulbC: Float64Array.from(year.dryBulbC),
    windMs: Float64Array.from(year.windMs),
    dayClearness,
  };
}

/** Moves what an hour cannot hold to its neighbour nearer noon; the day's total is kept. */
function carryInwards(ghi: Float64Array, sky: DaySky): void {
  for (let hour = 0; hour < 12; hour++) carry(ghi, sky, hour, hour + 1);
  for (let hour = 23; hour > 12; hour--) carry(ghi, sky, hour, hour - 1);
}

function carry(ghi: Float64Array, sky: DaySky, from: number, to: number): void {
  const most = CLEAREST_HOUR * sky.hourCosZenith[from]! * sky.normalWm2;
  if (ghi[from]! <= most) return;
  ghi[to]! += ghi[from]! - most;
  ghi[from] = most;
}

/** Clearness and diffuse share of the sunlit hours; dark ones take the nearest sunlit hour's. */
function fillDay(
  ghi: Float64Array,
  dhi: readonly number[],
  sky: DaySky,
  day: number,
  fallback: number,
  clearness: Float64Array,
  diffuseFraction: Float64Array,
): void {
  const at = 24 * day;
  let firstLit = 24;
  let lastLit = -1;
  for (let hour = 0; hour < 24; hour++) {
    const above = sky.hourCosZenith[hour]! * sky.normalWm2;
    if (above <= 0) continue;
    firstLit = Math.min(firstLit, hour);
    lastLit = hour;
    const global = ghi[hour]!;
    clearness[at + hour] = global / above;
    diffuseFraction[at + hour] = global > 0 ? Math.min(1, Math.max(0, dhi[at + hour]! / global)) : 1;
  }
  for (let hour = 0; hour < 24; hour++) {
    if (sky.hourCosZenith[hour]! > 0) continue;
    const nearest = Math.min(Math.max(hour, firstLit), lastLit);
    clearness[at + hour] = lastLit < 0 ? fallback : clearness[at + nearest]!;
    diffuseFraction[at + hour] = lastLit < 0 ? 1 : diffuseFraction[at + nearest]!;
  }
}
