/** Day-level statistics of generated weather, by the calculation that the observed ones were made with. */
import { mean, sampleCorrelation } from 'simple-statistics';
import { streamsOf } from '../../../packages/sim/src/chance/streams.ts';
import { dayOfYear, monthOfDay } from '../../../packages/sim/src/weather/calendar.ts';
import { meanClearness } from '../../../packages/sim/src/weather/clearness-table.ts';
import { dailyRangeC, fillDiurnalDryBulb } from '../../../packages/sim/src/weather/diurnal-dry-bulb.ts';
import { generateDays } from '../../../packages/sim/src/weather/generate-days.ts';
import { curveAt, monthPosition } from '../../../packages/sim/src/weather/month-curve.ts';
import { planNormals } from '../../../packages/sim/src/weather/normals-plan.ts';
import type { MonthlyNormals } from '../../../packages/sim/src/scenario/scenario.ts';

/** Consecutive days; `year` and `month` (0…11) say where each lies. */
export interface DaySeries {
  readonly year: Int32Array;
  readonly month: Int32Array;
  readonly clearness: Float64Array;
  readonly dryBulbC: Float64Array;
  readonly dailyRangeC: Float64Array;
}

const FIRST_DAY = Date.UTC(2001, 0, 1) / 86_400_000;

export function generateSeries(monthly: MonthlyNormals, years: number, seed: string): DaySeries {
  const plan = planNormals(monthly);
  const days = 365 * years;
  const made = generateDays(plan, FIRST_DAY, days + 1, 1, 1, streamsOf(seed, 0));
  const ranges = made.clearness.map((k, day) => {
    const position = monthPosition(dayOfYear(FIRST_DAY + day));
    return dailyRangeC(
      curveAt(plan.dryBulb.dailyRangeC, position),
      k,
      meanClearness(plan.clearness, position),
    );
  });
  const hours = new Float64Array(24 * days + 1);
  fillDiurnalDryBulb(made.dryBulbMeanC, ranges, days, hours);
  const ofDay = (day: number): Float64Array => hours.subarray(24 * day + 1, 24 * day + 25); // hour-ending, as in the files
  const index = Array.from({ length: days }, (_, day) => day);
  return {
    year: Int32Array.from(index, (day) => new Date((FIRST_DAY + day) * 86_400_000).getUTCFullYear()),
    month: Int32Array.from(index, (day) => monthOfDay(dayOfYear(FIRST_DAY + day))),
    clearness: made.clearness.slice(0, days),
    dryBulbC: Float64Array.from(index, (day) => mean([...ofDay(day)])),
    dailyRangeC: Float64Array.from(index, (day) => Math.max(...ofDay(day)) - Math.min(...ofDay(day))),
  };
}

/** Daily clearness alone, of common years that follow one another. */
export function generateClearness(monthly: MonthlyNormals, years: number, seed: string): Float64Array {
  const days = Math.ceil(365.25 * years);
  const { clearness } = generateDays(planNormals(monthly), FIRST_DAY, days, 1, 1, streamsOf(seed, 0));
  const isLeapDay = (day: number): boolean => {
    const date = new Date((FIRST_DAY + day) * 86_400_000);
    return date.getUTCMonth() === 1 && date.getUTCDate() === 29;
  };
  return clearness.filter((_, day) => !isLeapDay(day)).subarray(0, 365 * years);
}

/** Deviations from each calendar month's mean, of its own year (one typical year) or of all years (measured ones). */
export function deviations(
  series: DaySeries,
  values: Float64Array,
  about: 'own-year' | 'all-years',
): Float64Array {
  const sums = new Map<number, [number, number]>();
  const key = (day: number): number =>
    (about === 'own-year' ? 12 * series.year[day]! : 0) + series.month[day]!;
  values.forEach((value, day) => {
    const sum = sums.get(key(day)) ?? [0, 0];
    sums.set(key(day), [sum[0] + value, sum[1] + 1]);
  });
  return values.map((value, day) => {
    const [sum, count] = sums.get(key(day))!;
    return value - sum / count;
  });
}

/** Pairs of a day and the next, both in the same month. */
export function lag1(series: DaySeries, deviation: Float64Array): number {
  let product = 0;
  let first = 0;
  let second = 0;
  for (let day = 0; day + 1 < deviation.length; day++) {
    if (series.month[day] !== series.month[day + 1]) continue;
    product += deviation[day]! * deviation[day + 1]!;
    first += deviation[day]! * deviation[day]!;
    second += deviation[day + 1]! * deviation[day + 1]!;
  }
  return product / Math.sqrt(first * second);
}

export const rms = (values: Float64Array): number =>
  Math.sqrt(mean([...values.map((value) => value * value)]));

export const correlation = (a: Float64Array, b: Float64Array): number => sampleCorrelation([...a], [...b]);

export const DARK = 0.3;

/** Lengths of the runs of days below `DARK`. */
export function darkRuns(clearness: ArrayLike<number>): number[] {
  const runs: number[] = [];
  let length = 0;
  for (let day = 0; day <= clearness.length; day++) {
    if (day < clearness.length && clearness[day]! < DARK) length++;
    else if (length > 0) {
      runs.push(length);
      length = 0;
    }
  }
  return runs;
}

/** Share of dark days that lie in a run of at least n days. */
export function shareInRuns(runs: readonly number[], n: number): number {
  const days = (some: readonly number[]): number => some.reduce((sum, run) => sum + run, 0);
  return days(runs.filter((run) => run >= n)) / days(runs);
}
