/** What every chart over the minutes of an outage shares: its time axis, its nights, its pointer, its lines. */
import * as Plot from '@observablehq/plot';
import { clockText, dateInTwoLines, dateText } from './local-clock.ts';
import { timeOfDay } from './look.ts';
import { minuteBuckets } from './minute-buckets.ts';
import type { OutageView } from './outage-view.ts';
import type { SeriesStyle } from './series-style.ts';
import { PLOT_STYLE } from './what-changes.ts';

const LEFT = 48;
const RIGHT = 14;
const HOURS = [0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 96, 168];
const LABEL_PX = 58;

export interface PanelOptions {
  readonly height: number;
  readonly top?: number;
  readonly y: Plot.ScaleOptions;
  /** Leaves out the dates below, where another panel stands under this one. */
  readonly bare?: boolean;
  readonly marks: readonly Plot.Markish[];
}

export function minutePanel(
  outage: OutageView,
  { height, top = 26, y, bare = false, marks }: PanelOptions,
): SVGSVGElement {
  const { from, to, width } = outage;
  const ticks = timeTicks(outage);
  const dated = tickWithDate(outage, ticks);
  return Plot.plot({
    width,
    height,
    marginLeft: LEFT,
    marginRight: RIGHT,
    marginTop: top,
    marginBottom: bare ? 8 : 40,
    style: PLOT_STYLE,
    x: {
      domain: [from, to],
      label: null,
      ticks: ticks.map((t) => t.minute),
      tickFormat: (m: number) => (bare ? '' : tickText(outage, m, m === dated)),
      tickSize: 4,
    },
    y: { labelArrow: 'none', ...y },
    marks: [nights(outage), ...marks, pointer(outage)],
  }) as SVGSVGElement;
}

/** Pixels of the picture that stand for time. */
export function timePx({ width }: Pick<OutageView, 'width'>): number {
  return Math.max(60, width - LEFT - RIGHT);
}

/** Round local times in view, as close as their labels allow. Clock changes keep them on round times. */
export function timeTicks(outage: OutageView): { minute: number }[] {
  const { from, to, trace } = outage;
  const hours = (to - from) / 60;
  const step = HOURS.find((h) => hours / h <= timePx(outage) / LABEL_PX) ?? HOURS[HOURS.length - 1]!;
  const ticks: { minute: number }[] = [];
  for (let m = from; m < Math.min(to, trace.minutes); m++) {
    const sinceFirstMidnight = trace.localDay[m]! * 1440 + trace.localMinuteOfDay[m]!;
    if (sinceFirstMidnight % (step * 60) === 0) ticks.push({ minute: m });
  }
  return ticks;
}

/** Midnights carry their date; where none is in view, the first tick does. */
function tickWithDate({ trace }: OutageView, ticks: readonly { minute: number }[]): number | undefined {
  return ticks.some(({ minute }) => trace.localMinuteOfDay[minute] === 0) ? undefined : ticks[0]?.minute;
}

function tickText({ trace, clock }: OutageView, minute: number, withDate: boolean): string {
  const minuteOfDay = trace.localMinuteOfDay[minute]!;
  if (minuteOfDay === 0) return dateInTwoLines(trace, minute);
  const time = clock === 24 ? clockText(trace, minute, 24) : timeOfDay(minuteOfDay, 12).replace(':00', '');
  return withDate ? `${time}\n${dateText(trace, minute)}` : time;
}

/** Without sun. */
function nights({ trace, from, to }: OutageView): Plot.Markish {
  const dark: { from: number; to: number }[] = [];
  for (let m = from; m < to; m++) {
    if (trace.ghiWm2[m]! > 0) continue;
    const last = dark[dark.length - 1];
    if (last?.to === m) last.to = m + 1;
    else dark.push({ from: m, to: m + 1 });
  }
  return Plot.rectX(dark, { x1: 'from', x2: 'to', fill: 'var(--ink)', fillOpacity: 0.06 });
}

/** The minute pointed at in the list of events, and the end of the runtime. */
function pointer({ trace, from, to, at }: OutageView): Plot.Markish {
  const seen = (minute: number | null | undefined) =>
    minute !== null && minute !== undefined && minute >= from && minute <= to ? [minute] : [];
  return [
    Plot.ruleX(seen(trace.runtimeMinutes), {
      stroke: 'var(--caution)',
      strokeWidth: 1.5,
      strokeDasharray: '5 3',
    }),
    Plot.ruleX(seen(at), { stroke: 'var(--ink)', strokeWidth: 2 }),
  ];
}

/** A line through the means, in a band from the least to the greatest minute. */
export function banded(
  outage: OutageView,
  values: ArrayLike<number>,
  { colour, dash }: Pick<SeriesStyle, 'colour' | 'dash'>,
  scale: (value: number) => number = (v) => v,
): Plot.Markish[] {
  const buckets = minuteBuckets(values, outage.from, outage.to, timePx(outage));
  const scaled = buckets.map((b) => ({
    minute: b.minute,
    min: scale(b.min),
    max: scale(b.max),
    mean: scale(b.mean),
  }));
  return [
    Plot.areaY(scaled, { x: 'minute', y1: 'min', y2: 'max', fill: colour, fillOpacity: 0.28, clip: true }),
    Plot.lineY(scaled, {
      x: 'minute',
      y: 'mean',
      stroke: colour,
      strokeWidth: 1.75,
      strokeDasharray: dash.join(' '),
      clip: true,
    }),
  ];
}
