/** A weather year as clearness: what stays meaningful when its days are moved to other dates. */
import type { SkySite } from '../sky/site.ts';
import type { WeatherYear } from '../scenario/scenario.ts';
import { DAYS_PER_YEAR } from './calendar.ts';
import { yearSun } from './year-sun.ts';

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
  const { aboveWm2 } = yearSun({ latitudeDeg, longitudeDeg }, year.utcOffsetHours);
  const plan: YearPlan = {
    clearness: new Float64Array(24 * DAYS_PER_YEAR),
    diffuseFraction: new Float64Array(24 * DAYS_PER_YEAR),
    dryBulbC: Float64Array.from(year.dryBulbC),
    windMs: Float64Array.from(year.windMs),
    dayClearness: new Float64Array(DAYS_PER_YEAR),
  };
  let before = UNKNOWN_CLEARNESS;
  for (let day = 0; day < DAYS_PER_YEAR; day++) {
    const ghi = Float64Array.from(year.ghiWm2.slice(24 * day, 24 * day + 24));
    const above = aboveWm2.subarray(24 * day, 24 * day + 24);
    carryInwards(ghi, above);
    fillDay(ghi, year.dhiWm2, above, day, before, plan);
    const most = sumOf(above);
    if (most > 0) before = sumOf(ghi) / most;
    plan.dayClearness[day] = before;
  }
  return plan;
}

const sumOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

/** Moves what an hour cannot hold to its neighbour nearer noon; the day's total is kept. */
function carryInwards(ghi: Float64Array, above: Float64Array): void {
  const carry = (from: number, to: number): void => {
    const most = CLEAREST_HOUR * above[from]!;
    if (ghi[from]! <= most) return;
    ghi[to]! += ghi[from]! - most;
    ghi[from] = most;
  };
  for (let hour = 0; hour < 12; hour++) carry(hour, hour + 1);
  for (let hour = 23; hour > 12; hour--) carry(hour, hour - 1);
}

/** Clearness and diffuse share of the sunlit hours; dark ones take the nearest sunlit hour's. */
function fillDay(
  ghi: Float64Array,
  dhi: readonly number[],
  above: Float64Array,
  day: number,
  fallback: number,
  { clearness, diffuseFraction }: YearPlan,
): void {
  const at = 24 * day;
  let firstLit = 24;
  let lastLit = -1;
  for (let hour = 0; hour < 24; hour++) {
    if (above[hour]! <= 0) continue;
    firstLit = Math.min(firstLit, hour);
    lastLit = hour;
    const global = ghi[hour]!;
    clearness[at + hour] = global / above[hour]!;
    diffuseFraction[at + hour] = global > 0 ? Math.min(1, Math.max(0, dhi[at + hour]! / global)) : 1;
  }
  for (let hour = 0; hour < 24; hour++) {
    if (above[hour]! > 0) continue;
    const nearest = Math.min(Math.max(hour, firstLit), lastLit);
    clearness[at + hour] = lastLit < 0 ? fallback : clearness[at + nearest]!;
    diffuseFraction[at + hour] = lastLit < 0 ? 1 : diffuseFraction[at + nearest]!;
  }
}
