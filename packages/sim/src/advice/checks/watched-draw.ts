/** One draw of the tireless household, with what its watchers need beside the trace. */
import type { HouseholdSpec, Scenario } from '../../scenario/scenario.ts';
import { createAmbient, fillAmbient, type Ambient } from '../../step/ambient.ts';
import type { DrawTrace } from '../../trials/trace-draw.ts';
import { localTimes } from '../../trials/trace-table.ts';
import type { Peak } from './observed.ts';

export interface WatchedDraw {
  readonly household: HouseholdSpec;
  readonly trace: DrawTrace;
  readonly ambient: Ambient;
  /** 1 for each minute of the local day that somebody is awake. */
  readonly awake: Uint8Array;
  /** Watts of each unit and circuit, minute by minute, freed of what differences of sums leave in the last digits. */
  readonly loadW: readonly Float64Array[];
  readonly servedW: readonly Float64Array[];
}

export function watchedDraw(
  { site }: Scenario,
  household: HouseholdSpec,
  trace: DrawTrace,
  awake: Uint8Array,
): WatchedDraw {
  const ambient = createAmbient(trace.dryBulbC);
  fillAmbient(ambient, site.indoorC, site.indoorFollowsFraction);
  const loadW = trace.units.map((u) => inMicrowatts(u.loadW));
  const servedW = trace.circuits.map((c) => inMicrowatts(c.servedW));
  return { household, trace, ambient, awake, loadW, servedW };
}

/** Rounded to what a sum of watts can be trusted to. */
export function inMicrowatts(watts: Float64Array): Float64Array {
  return watts.map((w) => Math.round(w * 1e6) / 1e6);
}

export function isAsleep({ awake, trace }: WatchedDraw, minute: number): boolean {
  return awake[trace.localMinuteOfDay[minute]!] === 0;
}

export function localTimeAt({ trace }: WatchedDraw, minute: number): string {
  const only = (values: Uint16Array) => values.slice(minute, minute + 1);
  const { firstLocalDay, localMinuteOfDay, localDay } = trace;
  return localTimes({
    firstLocalDay,
    localMinuteOfDay: only(localMinuteOfDay),
    localDay: only(localDay),
  })[0]!;
}

/** Position of the highest value; 0 for none. */
export function highestAt(values: ArrayLike<number>): number {
  let best = 0;
  for (let m = 1; m < values.length; m++) if (values[m]! > values[best]!) best = m;
  return best;
}

export function peakOf(draw: WatchedDraw, watts: ArrayLike<number>): Peak {
  const minute = highestAt(watts);
  return { watts: watts[minute] ?? 0, at: localTimeAt(draw, minute), draw: draw.trace.draw };
}

export function higherPeak(a: Peak, b: Peak): Peak {
  return b.watts > a.watts ? b : a;
}

/** Highest mean over any `length` values in a row; the mean of all where there are fewer. */
export function highestMean(values: ArrayLike<number>, length: number): number {
  const span = Math.min(length, values.length);
  let sum = 0;
  let most = 0;
  for (let m = 0; m < values.length; m++) {
    sum += values[m]! - (m >= span ? values[m - span]! : 0);
    if (m >= span - 1) most = Math.max(most, sum);
  }
  return span === 0 ? 0 : most / span;
}
