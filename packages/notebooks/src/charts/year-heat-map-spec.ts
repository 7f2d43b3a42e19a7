/** The year's heat map as a Vega-Lite specification. One colour of the house style in shades; the text is always ink. */
import { cellText } from './year-cells.ts';
import type { TopLevelSpec } from 'vega-lite';
import type { YearCell } from './year-cells.ts';

export interface HeatMapLook {
  readonly across: string;
  readonly horizonDays: number;
  /** Picture width, px, axes included. */
  readonly width: number;
}

/** Shade of the longest days: pale enough that ink on it keeps 4.5:1 in light and in dark. */
export const DEEPEST = 0.42;
const PALEST = 0.03;
const WIDE = 640; // from here months run across, below it they run down
const FONT = 'system-ui, sans-serif';

export function heatMapSpec(cells: readonly YearCell[], look: HeatMapLook): TopLevelSpec {
  const wide = look.width >= WIDE;
  const months = distinct(cells.map((cell) => cell.month));
  const columns = distinct(cells.map((cell) => cell.column.label));
  const month = { field: 'month', type: 'ordinal', sort: months };
  const column = { field: 'column', type: 'ordinal', sort: columns };
  const padding = wide
    ? { left: 84, right: 8, top: 58, bottom: 8 }
    : { left: 44, right: 6, top: 46, bottom: 8 };
  const axis = { domain: false, ticks: false, labelAngle: 0, labelPadding: 6 };
  const monthAxis = { ...axis, title: null, labelExpr: 'slice(datum.label, 0, 3)' };
  const columnAxis = { ...axis, ...columnTitle(look.across, wide) };
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    width: look.width - padding.left - padding.right,
    height: wide ? columns.length * 46 : 12 * 36,
    padding,
    autosize: { type: 'none' },
    background: 'transparent',
    config: CONFIG,
    data: { values: rowsOf(cells, look.horizonDays) },
    encoding: {
      x: wide
        ? { ...month, axis: { ...monthAxis, orient: 'top' } }
        : { ...column, axis: { ...columnAxis, orient: 'top' } },
      y: wide ? { ...column, axis: columnAxis } : { ...month, axis: monthAxis },
    },
    layer: [RECTANGLES, OUTLINES, FIGURES],
  } as TopLevelSpec;
}

const CONFIG = {
  font: FONT,
  aria: false, // the frame speaks for the picture
  view: { stroke: null },
  scale: { bandPaddingInner: 0.06, bandPaddingOuter: 0 },
  axis: {
    labelColor: 'var(--ink)',
    titleColor: 'var(--ink)',
    labelFontSize: 13,
    titleFontSize: 13,
    titleFontWeight: 'normal',
  },
};

const RECTANGLES = {
  mark: { type: 'rect', fill: 'var(--series-1)', cornerRadius: 2 },
  encoding: { fillOpacity: { field: 'shade', type: 'quantitative', scale: null, legend: null } },
};
const OUTLINES = {
  transform: [{ filter: 'datum.own' }],
  mark: { type: 'rect', fill: 'transparent', stroke: 'var(--ink)', strokeWidth: 1.5, cornerRadius: 2 },
};
const FIGURES = {
  mark: { type: 'text', fill: 'var(--ink)', fontSize: 14, baseline: 'middle', align: 'center' },
  encoding: { text: { field: 'text', type: 'nominal' } },
};

/** Level, over the rows or the columns. */
function columnTitle(title: string, wide: boolean) {
  return wide
    ? { title, titleAngle: 0, titleAlign: 'left', titleBaseline: 'bottom', titleX: -82, titleY: -32 }
    : { title, titleAnchor: 'start', titlePadding: 6 };
}

function rowsOf(cells: readonly YearCell[], horizonDays: number) {
  const days = (cell: YearCell) => (cell.days ? (cell.days.value ?? horizonDays) : 0);
  const most = Math.max(...cells.map(days), 1e-9);
  return cells.map((cell) => ({
    month: cell.month,
    column: cell.column.label,
    own: cell.column.own,
    shade: PALEST + (DEEPEST - PALEST) * (days(cell) / most),
    text: cellText(cell, horizonDays),
  }));
}

function distinct(names: readonly string[]): string[] {
  return [...new Set(names)];
}
