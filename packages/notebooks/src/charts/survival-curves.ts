/**
 * How long each strategy holds: the share of outages still running, day by day.
 *
 * Vega-Lite, because this is a layered chart (bands, steps, markers, names) over one table whose look follows from
 * the data, and the specification is itself a thing to publish and reuse.
 */
import embed from 'vega-embed';
import type { TopLevelSpec } from 'vega-lite';
import type { StrategySummary, StudySummary } from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { curveSentence } from './curve-sentences.ts';
import { curvesTable } from './curves-table.ts';
import { labelPlaces, type LabelPlace } from './label-places.ts';
import { nineInTenTitle, shownStrategies, type Shown } from './nine-in-ten-words.ts';
import { seriesKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';
import { drawnUntilDay, survivalAt } from './step-curve.ts';

export interface SurvivalCurvesOptions extends Shown {
  /** Picture width, px. */
  readonly width: number;
}

interface Series {
  readonly summary: StrategySummary;
  readonly style: SeriesStyle;
}

const NAME_FONT = '650 13px system-ui, sans-serif';
const MARKERS_PER_CURVE = 7;
const PADDING = { left: 50, right: 14, top: 34, bottom: 44 };

/** A figure: curves, sentences, table. Rejects only on a fault of ours. */
export async function survivalCurves(
  study: StudySummary,
  options: SurvivalCurvesOptions,
): Promise<HTMLElement> {
  const series = chosenSeries(study, options);
  const picture = await drawn(survivalSpec(series, study.horizonDays, options.width));
  const lettered = !namesFit(series, options.width);
  return chartFrame({
    id: 'survival-curves',
    title: nineInTenTitle(study, options),
    note: 'Share of simulated outages in which the essentials are still on, by days since the outage began. Bands: 95 % interval at each day.',
    picture,
    key: series.map(({ summary, style }) => ({
      sample: seriesKey(style),
      text: `${lettered ? `${style.letter}: ` : ''}${curveSentence(summary, study.horizonDays)}`,
    })),
    table: curvesTable(
      series.map((s) => s.summary),
      study.horizonDays,
    ),
    provenance: study.provenance,
  });
}

/** A strategy's place in the whole study decides its look, whatever else is shown. */
function chosenSeries(study: StudySummary, shown: Shown): Series[] {
  const all = shownStrategies(study, { alternativeId: shown.alternativeId });
  return shownStrategies(study, shown).map((summary) => ({
    summary,
    style: seriesStyle(all.indexOf(summary)),
  }));
}

async function drawn(spec: TopLevelSpec): Promise<SVGSVGElement> {
  const stage = document.createElement('div');
  // ast: expressions are interpreted, not compiled, as the page's security policy forbids making code from text
  await embed(stage, spec, {
    mode: 'vega-lite',
    renderer: 'svg',
    actions: false,
    ast: true,
    tooltip: false,
    defaultStyle: false,
  });
  return stage.querySelector('svg')!;
}

function namesFit(series: readonly Series[], width: number): boolean {
  return width >= 560 && series.every(({ summary }) => nameWidth(summary.strategyTitle) < width * 0.4);
}

/** Width of a name as drawn, px. */
function nameWidth(name: string): number {
  const pen = document.createElement('canvas').getContext('2d')!;
  pen.font = NAME_FONT;
  return pen.measureText(name).width;
}

/** The chart as a Vega-Lite specification; `width` px wide in all. */
export function survivalSpec(series: readonly Series[], horizonDays: number, width: number): TopLevelSpec {
  const lastDay = drawnUntilDay(
    series.map((s) => s.summary.curve),
    horizonDays,
  );
  const plot = {
    width: width - PADDING.left - PADDING.right,
    height: Math.round(Math.min(380, Math.max(260, width * 0.5))),
  };
  const curves = { data: { values: series.flatMap((s) => curveRows(s, lastDay)) } };
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    ...plot,
    padding: PADDING,
    autosize: { type: 'none' },
    background: 'transparent',
    config: chartConfig,
    encoding: { x: dayAxis(lastDay, plot.width), y: shareAxis },
    layer: [
      { ...curves, ...bandLayer(series) },
      nineInTenRule(lastDay),
      { ...curves, ...lineLayer(series) },
      {
        data: { values: series.flatMap((s, i) => markerRows(s, lastDay, i / series.length)) },
        ...markerLayer(series),
      },
      ...nameLayers(series, lastDay, plot, width),
    ],
  } as TopLevelSpec;
}

const chartConfig = {
  font: 'system-ui, sans-serif',
  view: { stroke: null },
  axis: {
    labelColor: 'var(--ink)',
    titleColor: 'var(--ink)',
    gridColor: 'var(--rule)',
    domainColor: 'var(--edge)',
    tickColor: 'var(--edge)',
    labelFontSize: 13,
    titleFontSize: 13,
    titleFontWeight: 'normal',
  },
};

function dayAxis(lastDay: number, width: number) {
  const ticks = Math.max(2, Math.floor(width / 80));
  return {
    field: 'day',
    type: 'quantitative',
    title: 'Days since the outage began',
    scale: { domain: [0, lastDay], nice: false },
    axis: { grid: false, tickCount: ticks },
  };
}

const shareAxis = {
  field: 'survival',
  type: 'quantitative',
  title: 'Outages with the essentials still on',
  scale: { domain: [0, 1] },
  axis: {
    format: '.0%',
    values: [0, 0.25, 0.5, 0.75, 0.9, 1],
    titleAngle: 0,
    titleAlign: 'left',
    titleBaseline: 'bottom',
    titleX: -PADDING.left + 2,
    titleY: -14, // level, over the axis
  },
};

/** Vega-Lite scales from strategy to its look; none has a legend, names stand at the curves. */
const channel = (series: readonly Series[], look: (style: SeriesStyle) => unknown) => ({
  field: 'strategy',
  type: 'nominal',
  legend: null,
  scale: { domain: series.map((s) => s.summary.strategyId), range: series.map((s) => look(s.style)) },
});

function bandLayer(series: readonly Series[]) {
  return {
    mark: { type: 'area', interpolate: 'step-after', opacity: 0.14 },
    encoding: {
      y: { ...shareAxis, field: 'low' },
      y2: { field: 'high' },
      color: channel(series, (s) => s.colour),
    },
  };
}

function lineLayer(series: readonly Series[]) {
  return {
    mark: { type: 'line', interpolate: 'step-after', strokeWidth: 2.25 },
    encoding: {
      color: channel(series, (s) => s.colour),
      strokeDash: channel(series, (s) => (s.dash.length ? s.dash : [1, 0])),
    },
  };
}

function markerLayer(series: readonly Series[]) {
  return {
    mark: { type: 'point', filled: true, size: 75, opacity: 1, stroke: 'var(--paper)', strokeWidth: 1 },
    encoding: { fill: channel(series, (s) => s.colour), shape: channel(series, (s) => s.marker) },
  };
}

/** The level the headline reads. */
function nineInTenRule(lastDay: number) {
  return {
    data: { values: [{ day: 0, end: lastDay, survival: 0.9 }] },
    mark: { type: 'rule', stroke: 'var(--ink-soft)', strokeWidth: 1, strokeDash: [1, 3] },
    encoding: { x2: { field: 'end' } },
  };
}

/** Names in the curve's colour on a rim of paper, so that a line passing behind does not cut them. */
function nameLayers(
  series: readonly Series[],
  lastDay: number,
  plot: { width: number; height: number },
  width: number,
) {
  const lettered = !namesFit(series, width);
  const places = labelPlaces(
    series.map(({ summary, style }) => ({
      ...named(lettered ? style.letter : summary.strategyTitle),
      points: pixelPoints(summary, lastDay, plot),
    })),
    plot,
  );
  return places.flatMap((place, i) => {
    const colour = series[i]!.style.colour;
    return [nameLayer(place, { stroke: 'var(--paper)', strokeWidth: 5 }), nameLayer(place, { fill: colour })];
  });
}

const named = (text: string) => ({ text, textWidth: nameWidth(text) });

function nameLayer({ text, x, y }: LabelPlace, look: object) {
  return {
    data: { values: [{}] },
    mark: {
      type: 'text',
      align: 'left',
      baseline: 'middle',
      fontSize: 13,
      fontWeight: 650,
      strokeJoin: 'round',
      ...look,
    },
    encoding: { x: { value: x }, y: { value: y }, text: { value: text } },
  };
}

function pixelPoints(
  { curve }: StrategySummary,
  lastDay: number,
  { width, height }: { width: number; height: number },
) {
  const points = curve.day.map(
    (day, i) => [(day / lastDay) * width, (1 - curve.survival[i]!) * height] as const,
  );
  const end = curve.survival[curve.survival.length - 1] ?? 1;
  const inside = points.filter(([x]) => x <= width);
  return end > 0 ? [...inside, [width, inside[inside.length - 1]![1]] as const] : inside;
}

/** The curve's own steps, and one more where it is cut off by the horizon or the edge. */
function curveRows({ summary: { strategyId, curve } }: Series, lastDay: number) {
  const row = (day: number, i: number) => ({
    strategy: strategyId,
    day,
    survival: curve.survival[i]!,
    low: curve.low[i]!,
    high: curve.high[i]!,
  });
  const rows = curve.day.flatMap((day, i) => (day <= lastDay ? [row(day, i)] : []));
  const last = rows[rows.length - 1];
  if (last && last.survival > 0) rows.push({ ...last, day: lastDay });
  return rows;
}

/** A few markers along the curve, offset (share of a step) so that curves lying together do not hide each other's. */
function markerRows({ summary: { strategyId, curve } }: Series, lastDay: number, offset: number) {
  const step = lastDay / MARKERS_PER_CURVE;
  return Array.from({ length: MARKERS_PER_CURVE }, (_, i) => (i + 0.25 + 0.75 * offset) * step)
    .map((day) => ({ strategy: strategyId, day, survival: survivalAt(curve, day) }))
    .filter(({ survival }) => survival > 0.005);
}
