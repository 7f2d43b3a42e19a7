/** The survival chart as a Vega-Lite specification. Colours are variables of the house style: light, dark, print. */
import type { TopLevelSpec } from 'vega-lite';
import { labelPlaces, type LabelPlace } from './label-places.ts';
import type { SeriesStyle } from './series-style.ts';
import { drawnUntilDay } from './step-curve.ts';
import { curveRows, markerRows, pixelPoints, type CurveSeries } from './survival-rows.ts';
import { timeAxis } from './time-axis.ts';
import { textWidth } from './wrapped-text.ts';

const PADDING = { left: 50, right: 14, top: 34, bottom: 44 };
const NAME_FONT = { weight: 650, px: 13, family: 'system-ui, sans-serif' };

/** `width` px in all, axes included. */
export function survivalSpec(
  series: readonly CurveSeries[],
  horizonDays: number,
  width: number,
): TopLevelSpec {
  const curves = series.map((s) => s.summary.curve);
  const lastDay = drawnUntilDay(curves, horizonDays);
  const { word, perDay } = timeAxis(lastDay);
  const drawn = { lastDay, perDay };
  const plot = {
    width: width - PADDING.left - PADDING.right,
    height: Math.round(Math.min(380, Math.max(260, width * 0.5))),
  };
  const steps = { values: series.flatMap((s) => curveRows(s, drawn)) };
  const markers = { values: series.flatMap((s, i) => markerRows(s, drawn, i / series.length)) };
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    ...plot,
    padding: PADDING,
    autosize: { type: 'none' },
    background: 'transparent',
    config: CONFIG,
    encoding: {
      x: timeChannel(`${word} since the outage began`, lastDay * perDay, plot.width),
      y: SHARE_CHANNEL,
    },
    layer: [
      { data: steps, ...bandLayer(series) },
      nineInTenRule(lastDay * perDay),
      { data: steps, ...lineLayer(series) },
      { data: markers, ...markerLayer(series) },
      ...nameLayers(series, lastDay, plot, namesFit(series, width)),
    ],
  } as TopLevelSpec;
}

/** Is there room for whole names at the curves? Otherwise letters stand there. */
export function namesFit(series: readonly CurveSeries[], width: number): boolean {
  return width >= 560 && series.every(({ summary }) => nameWidth(summary.strategyTitle) < width * 0.4);
}

const CONFIG = {
  font: NAME_FONT.family,
  aria: false, // the frame speaks for the picture
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

function timeChannel(title: string, last: number, width: number) {
  return {
    field: 'time',
    type: 'quantitative',
    title,
    scale: { domain: [0, last], nice: false },
    axis: { grid: false, tickCount: Math.max(2, Math.floor(width / 80)) },
  };
}

const SHARE_CHANNEL = {
  field: 'survival',
  type: 'quantitative',
  title: 'Outages with the essentials still on',
  scale: { domain: [0, 1] },
  axis: {
    format: '.0%',
    values: [0, 0.25, 0.5, 0.75, 0.9, 1],
    titleAngle: 0, // level, over the axis: easier to read than on its side
    titleAlign: 'left',
    titleBaseline: 'bottom',
    titleX: -PADDING.left + 2,
    titleY: -14,
  },
};

/** From strategy to its look. No legend: names stand at the curves, samples in the key. */
function lookChannel(series: readonly CurveSeries[], look: (style: SeriesStyle) => unknown) {
  return {
    field: 'strategy',
    type: 'nominal',
    legend: null,
    scale: { domain: series.map((s) => s.summary.strategyId), range: series.map((s) => look(s.style)) },
  };
}

function bandLayer(series: readonly CurveSeries[]) {
  return {
    mark: { type: 'area', interpolate: 'step-after', opacity: 0.14 },
    encoding: {
      y: { ...SHARE_CHANNEL, field: 'low' },
      y2: { field: 'high' },
      color: lookChannel(series, (s) => s.colour),
    },
  };
}

function lineLayer(series: readonly CurveSeries[]) {
  return {
    mark: { type: 'line', interpolate: 'step-after', strokeWidth: 2.25 },
    encoding: {
      color: lookChannel(series, (s) => s.colour),
      strokeDash: lookChannel(series, (s) => (s.dash.length ? s.dash : [1, 0])),
    },
  };
}

function markerLayer(series: readonly CurveSeries[]) {
  return {
    mark: { type: 'point', filled: true, size: 75, opacity: 1, stroke: 'var(--paper)', strokeWidth: 1 },
    encoding: {
      fill: lookChannel(series, (s) => s.colour),
      shape: lookChannel(series, (s) => s.marker),
    },
  };
}

/** The level the headline reads. */
function nineInTenRule(last: number) {
  return {
    data: { values: [{ time: 0, end: last, survival: 0.9 }] },
    mark: { type: 'rule', stroke: 'var(--ink-soft)', strokeWidth: 1, strokeDash: [1, 3] },
    encoding: { x2: { field: 'end' } },
  };
}

function nameLayers(
  series: readonly CurveSeries[],
  lastDay: number,
  plot: { width: number; height: number },
  whole: boolean,
) {
  const named = series.map((s) => {
    const text = whole ? s.summary.strategyTitle : s.style.letter;
    return { text, textWidth: nameWidth(text), points: pixelPoints(s, lastDay, plot) };
  });
  return labelPlaces(named, plot).flatMap((place, i) => [
    nameLayer(place, { stroke: 'var(--paper)', strokeWidth: 5, strokeJoin: 'round' }), // so that no line cuts it
    nameLayer(place, { fill: series[i]!.style.colour }),
  ]);
}

function nameLayer({ text, x, y }: LabelPlace, look: object) {
  const { px, weight } = NAME_FONT;
  return {
    data: { values: [{}] },
    mark: { type: 'text', align: 'left', baseline: 'middle', fontSize: px, fontWeight: weight, ...look },
    encoding: { x: { value: x }, y: { value: y }, text: { value: text } },
  };
}

/** Width of a name as drawn, px. */
function nameWidth(name: string): number {
  return textWidth(name, `${NAME_FONT.weight} ${NAME_FONT.px}px ${NAME_FONT.family}`);
}
