/**
 * From runtimes, some of them cut off by the horizon, to a survival curve. MODEL.md, Statistics, S1–S3.
 *
 * Product-limit estimate: Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457–481. Variance: Greenwood 1926, in the
 * form of Klein & Moeschberger, Survival Analysis, 2nd ed. 2003, §4.2. Interval: log(−log S), ibid. §4.3.
 */
import { exp, log } from '../portable/elementary.ts';
import { Z_95 } from './normal-quantile.ts';
import type { SurvivalCurve } from './study-summary.ts';
import { wilson } from './wilson.ts';

/** A survival curve at the times when something ended, ascending. All arrays have the same length, perhaps 0. */
export interface LifeTable {
  /** How many were followed from time 0. */
  readonly subjects: number;
  /** Times at which at least one ended, in the unit of the input. */
  readonly time: Float64Array;
  /** Still running and watched just before `time`. */
  readonly atRisk: Float64Array;
  /** How many ended at `time`. */
  readonly events: Float64Array;
  /** Share still running just after `time`: the estimate of P(T > time). */
  readonly survival: Float64Array;
  /** Greenwood standard error of `survival`; 0 once the curve is at 0. */
  readonly standardError: Float64Array;
  /** Pointwise 95 % interval of `survival`; see `pointwiseInterval`. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Kaplan–Meier estimate with Greenwood standard error and pointwise log-log interval. Equal times are one step; one
 * that was cut off at the very time another ended counts as still running then (the usual convention).
 *
 * @param times any unit, ≥ 0, no NaN; any order; not changed.
 * @param censored same length; 1 where `times[i]` is only as far as it was watched, else 0.
 * @throws RangeError for a time below 0 or NaN, or where the lengths differ
 */
export function kaplanMeier(times: ArrayLike<number>, censored: ArrayLike<number>): LifeTable {
  assertTimes(times, censored);
  const ended = sortedWhere(times, censored, false);
  const cutOff = sortedWhere(times, censored, true);
  const steps = countDistinct(ended);
  const table = emptyTable(times.length, steps);
  let atRisk = times.length;
  let greenwood = 0; // Σ d / (n (n − d))
  let survival = 1;
  let lost = 0;
  for (let step = 0, i = 0; step < steps; step += 1) {
    const time = ended[i]!;
    let events = 0;
    for (; i < ended.length && ended[i] === time; i += 1) events += 1;
    for (; lost < cutOff.length && cutOff[lost]! < time; lost += 1) atRisk -= 1;
    survival *= (atRisk - events) / atRisk;
    greenwood += events / (atRisk * (atRisk - events));
    fillStep(table, step, time, atRisk, events, survival, greenwood);
    atRisk -= events;
  }
  return table;
}

/** The table as a drawable step curve from day 0. `perDay`: units of `table.time` in a day. */
export function survivalCurve(table: LifeTable, perDay: number): SurvivalCurve {
  return {
    day: [0, ...Array.from(table.time, (t) => t / perDay)],
    survival: [1, ...Array.from(table.survival, withoutNoise)],
    low: [lowAtStart(table.subjects), ...table.low],
    high: [1, ...table.high],
  };
}

/** A product of fractions misses 0.9 by its last bits: whoever looks for the first day below 0.9 is not to be misled. */
function withoutNoise(share: number): number {
  return Number(share.toFixed(12));
}

/** Lower limit while none of `subjects` has ended. */
export function lowAtStart(subjects: number): number {
  return wilson(subjects, subjects).low ?? 0;
}

/**
 * log(−log S) interval. Where that form has no value (no run ended yet, or all did) the Wilson score limits of
 * `subjects` in `subjects`, or of none in them, take its place: a curve that nothing has bent yet is not certain.
 */
function pointwiseInterval(
  survival: number,
  greenwood: number,
  subjects: number,
): [low: number, high: number] {
  if (survival <= 0) return [0, wilson(0, subjects).high ?? 1];
  const logSurvival = log(survival);
  if (logSurvival === 0) return [lowAtStart(subjects), 1];
  const spread = exp((Z_95 * Math.sqrt(greenwood)) / -logSurvival);
  return [exp(logSurvival * spread), exp(logSurvival / spread)];
}

function fillStep(
  table: LifeTable,
  step: number,
  time: number,
  atRisk: number,
  events: number,
  survival: number,
  greenwood: number,
): void {
  const [low, high] = pointwiseInterval(survival, greenwood, table.subjects);
  table.time[step] = time;
  table.atRisk[step] = atRisk;
  table.events[step] = events;
  table.survival[step] = survival;
  table.standardError[step] = survival > 0 ? survival * Math.sqrt(greenwood) : 0;
  table.low[step] = low;
  table.high[step] = high;
}

function emptyTable(subjects: number, steps: number): LifeTable {
  const column = () => new Float64Array(steps);
  return {
    subjects,
    time: column(),
    atRisk: column(),
    events: column(),
    survival: column(),
    standardError: column(),
    low: column(),
    high: column(),
  };
}

function assertTimes(times: ArrayLike<number>, censored: ArrayLike<number>): void {
  if (censored.length !== times.length)
    throw new RangeError(
      `censored: found a length of ${censored.length}; expected that of times, ${times.length}`,
    );
  for (let i = 0; i < times.length; i += 1) {
    if (!(times[i]! >= 0))
      throw new RangeError(`times: found ${String(times[i])} at ${i}; expected numbers of at least 0`);
  }
}

function sortedWhere(times: ArrayLike<number>, censored: ArrayLike<number>, cutOff: boolean): Float64Array {
  const kept = new Float64Array(times.length);
  let count = 0;
  for (let i = 0; i < times.length; i += 1) {
    if ((censored[i] === 1) === cutOff) {
      kept[count] = times[i]!;
      count += 1;
    }
  }
  return kept.subarray(0, count).sort();
}

function countDistinct(sorted: Float64Array): number {
  let count = 0;
  for (let i = 0; i < sorted.length; i += 1) if (i === 0 || sorted[i] !== sorted[i - 1]) count += 1;
  return count;
}
