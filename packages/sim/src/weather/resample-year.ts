/** Hourly weather by taking runs of whole days from a weather year around the date. MODEL.md §Weather. */
import type { Streams } from '../chance/streams.ts';
import { DAYS_PER_YEAR, dayOfYear } from './calendar.ts';
import type { HourlyWeather } from './hourly-weather.ts';
import type { YearPlan } from './year-plan.ts';

/** Hours over which the step in dry-bulb between two runs of days is let out. */
const JOIN_HOURS = 6;

export interface ResampleOptions {
  /** Days are taken from no further than this from the date, 0…182. */
  readonly windowDays: number;
  /** Mean length of the runs of days taken together, 1 or more. */
  readonly blockDays: number;
  /** The first run lasts at least this many days: 2 when the outage begins after sunset, else 1. */
  readonly settledDays: number;
  /** The last of the settled days is one of this dullest share of the window; 1 for any day. */
  readonly dullestFraction: number;
}

/**
 * A run is a constant shift of the calendar: the stationary bootstrap of Politis & Romano 1994 (J. Am. Stat. Assoc.
 * 89:1303) held to a window of dates. Each day ends the run with chance 1 / blockDays. Takes two numbers a day.
 */
export function resampleYear(
  plan: YearPlan,
  options: ResampleOptions,
  streams: Streams,
  out: HourlyWeather,
): void {
  const stream = streams('weather/days');
  let shift = 0;
  for (let day = 0; day < out.days; day++) {
    const date = dayOfYear(out.firstLocalDay + day);
    const ends = stream() * options.blockDays < 1;
    const chosen = stream();
    if (day === 0) shift = firstShift(plan, options, date, chosen);
    else if (ends && day >= options.settledDays) shift = anyShift(options.windowDays, chosen);
    const source = sourceDay(date, shift);
    const eveningBefore = 24 * sourceDay(source, -1) + 23;
    if (day === 0) {
      out.dryBulbC[0] = plan.dryBulbC[eveningBefore]!;
      out.windMs[0] = plan.windMs[eveningBefore]!;
    }
    copyDay(plan, source, out.dryBulbC[24 * day]! - plan.dryBulbC[eveningBefore]!, day, out);
  }
}

/** @param stepC how much warmer the day before ended than the day before the source did. */
function copyDay(plan: YearPlan, source: number, stepC: number, day: number, out: HourlyWeather): void {
  for (let hour = 0; hour < 24; hour++) {
    const to = 24 * day + hour;
    const from = 24 * source + hour;
    out.clearness[to] = plan.clearness[from]!;
    out.diffuseFraction[to] = plan.diffuseFraction[from]!;
    out.dryBulbC[to + 1] = plan.dryBulbC[from]! + stepC * Math.max(0, 1 - (hour + 1) / JOIN_HOURS);
    out.windMs[to + 1] = plan.windMs[from]!;
  }
}

const sourceDay = (date: number, shift: number): number => (date + shift + DAYS_PER_YEAR) % DAYS_PER_YEAR;

function anyShift(windowDays: number, u: number): number {
  return Math.floor(u * (2 * windowDays + 1)) - windowDays;
}

/** Of the window's days, in order of daily clearness, one of the dullest share. */
function firstShift(plan: YearPlan, options: ResampleOptions, date: number, u: number): number {
  const { windowDays, settledDays, dullestFraction } = options;
  if (dullestFraction >= 1) return anyShift(windowDays, u);
  const clearness = (shift: number): number => plan.dayClearness[sourceDay(date, shift + settledDays - 1)]!;
  const shifts = Array.from({ length: 2 * windowDays + 1 }, (_, index) => index - windowDays);
  shifts.sort((a, b) => clearness(a) - clearness(b) || a - b);
  const dullest = Math.max(1, Math.round(dullestFraction * shifts.length));
  return shifts[Math.floor(u * dullest)]!;
}
