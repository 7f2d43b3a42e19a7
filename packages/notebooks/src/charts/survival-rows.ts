/** Survival curves as the rows a chart draws. Times are days, × `perDay` of the axis they are drawn on. */
import type { StrategySummary, SurvivalCurve } from '@rideout/sim';
import type { SeriesStyle } from './series-style.ts';
import { survivalAt } from './step-curve.ts';

export interface CurveSeries {
  readonly summary: StrategySummary;
  readonly style: SeriesStyle;
}

/** What part of time is drawn, in which unit. */
export interface DrawnTime {
  readonly lastDay: number;
  readonly perDay: number;
}

const MARKERS_PER_CURVE = 7;

const LEAST_STEP = 1 / 1000; // of all outages; less is less than a pixel

/** The curve's steps that can be seen, and one more where it is cut off by the horizon or the edge. */
export function curveRows({ summary: { strategyId, curve } }: CurveSeries, { lastDay, perDay }: DrawnTime) {
  const row = (day: number, i: number) => ({
    strategy: strategyId,
    time: day * perDay,
    survival: curve.survival[i]!,
    low: curve.low[i]!,
    high: curve.high[i]!,
  });
  const rows = stepsSeen(curve).flatMap((i) => (curve.day[i]! <= lastDay ? [row(curve.day[i]!, i)] : []));
  const last = rows[rows.length - 1];
  if (last && last.survival > 0) rows.push({ ...last, time: lastDay * perDay });
  return rows;
}

/** Positions of the first step, of each that lies `LEAST_STEP` below the one seen before it, and of the last. */
function stepsSeen({ survival }: SurvivalCurve): number[] {
  let seen = Infinity;
  return [...survival.keys()].filter((i) => {
    const shown = seen - survival[i]! >= LEAST_STEP - 1e-12 || i === survival.length - 1;
    if (shown) seen = survival[i]!;
    return shown;
  });
}

/** A few markers along the curve, offset (share of a step) so that curves lying together do not hide each other's. */
export function markerRows(series: CurveSeries, { lastDay, perDay }: DrawnTime, offset: number) {
  const { strategyId, curve } = series.summary;
  const step = lastDay / MARKERS_PER_CURVE;
  return Array.from({ length: MARKERS_PER_CURVE }, (_, i) => (i + 0.25 + 0.75 * offset) * step)
    .map((day) => ({ strategy: strategyId, time: day * perDay, survival: survivalAt(curve, day) }))
    .filter(({ survival }) => survival > 0.005);
}

/** The curve in a picture of `width` × `height` px. */
export function pixelPoints(
  series: CurveSeries,
  lastDay: number,
  { width, height }: { width: number; height: number },
): (readonly [number, number])[] {
  return curveRows(series, { lastDay, perDay: 1 }).map(
    ({ time, survival }) => [(time / lastDay) * width, (1 - survival) * height] as const,
  );
}
