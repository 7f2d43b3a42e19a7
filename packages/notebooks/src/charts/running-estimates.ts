/**
 * An estimate coming to rest as outages are added: the days that nine in ten, and half, reach, with their intervals.
 *
 * Observable Plot: two bands and two lines on a logarithmic axis, drawn anew each time more outages are in.
 */
import * as Plot from '@observablehq/plot';
import {
  intervalCell,
  intervalText,
  reachCell,
  reachText,
  type Estimate,
  type RunningEstimate,
} from '@rideout/sim';
import type { ToldProvenance } from './changes-sentence.ts';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { bandKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';
import { timeAxis } from './time-axis.ts';
import { PLOT_STYLE } from './what-changes.ts';

export interface RunningEstimatesOptions {
  readonly strategyTitle: string;
  readonly alternativeTitle: string;
  readonly horizonDays: number;
  readonly provenance: ToldProvenance;
  /** Picture width, px. */
  readonly width: number;
}

type Figure = 'nineInTenDays' | 'medianDays';

const FIGURES: readonly { figure: Figure; name: string; style: ReturnType<typeof seriesStyle> }[] = [
  { figure: 'nineInTenDays', name: 'nine in ten', style: seriesStyle(0) },
  { figure: 'medianDays', name: 'half', style: seriesStyle(1) },
];

export function runningEstimates(
  looks: readonly RunningEstimate[],
  options: RunningEstimatesOptions,
): HTMLElement {
  const { strategyTitle, alternativeTitle, horizonDays, provenance, width } = options;
  const last = looks.at(-1);
  return chartFrame({
    id: 'running-estimates',
    title: last ? finding(looks, last, horizonDays) : 'No outage has been simulated yet',
    note: `Time that nine outages in ten, and half of them, reach with “${strategyTitle}”, ${alternativeTitle}, from the first so many simulated outages. Bands: 95\u00a0% intervals. Each doubling of the outages is as wide as the one before.`,
    picture: picture(looks, horizonDays, width),
    key: FIGURES.map(({ figure, name, style }) => ({
      sample: bandKey(style),
      text: last ? `${name} reach ${figureText(last[figure], horizonDays)}` : name,
    })),
    sentences: last ? movedSentences(looks, last, horizonDays) : [],
    table: table(looks, horizonDays),
    provenance,
  });
}

interface Row {
  readonly draws: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What the horizon hides stands at the horizon. */
function rowsOf(looks: readonly RunningEstimate[], figure: Figure, horizonDays: number): Row[] {
  const within = (days: number | null) => days ?? horizonDays;
  return looks.map(({ draws, [figure]: { value, low, high } }) => ({
    draws,
    value: within(value),
    low: within(low),
    high: within(high),
  }));
}

function picture(looks: readonly RunningEstimate[], horizonDays: number, width: number): SVGSVGElement {
  const all = FIGURES.map((f) => ({ ...f, rows: rowsOf(looks, f.figure, horizonDays) }));
  const settledFrom = Math.floor(looks.length / 4); // the widest intervals, at the start, are cut off
  const top = Math.max(0.25, ...all.flatMap(({ rows }) => rows.slice(settledFrom).map((row) => row.high)));
  const { word, perDay } = timeAxis(top);
  const time = (of: 'value' | 'low' | 'high') => (row: Row) => row[of] * perDay;
  const [first, last] = [looks[0]?.draws ?? 1, looks.at(-1)?.draws ?? 10];
  return Plot.plot({
    width,
    height: 300,
    marginLeft: 44,
    marginRight: 88,
    marginTop: 30,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      type: 'log',
      domain: [first, Math.max(last, first + 1)],
      label: 'Outages simulated',
      labelArrow: 'none',
      labelAnchor: 'center',
      ticks: doublings(first, last, width),
      tickFormat: (n: number) => String(n),
    },
    y: {
      domain: [0, top * perDay * 1.05],
      label: `${word} reached`,
      labelArrow: 'none',
      grid: true,
      ticks: 5,
    },
    marks: all.flatMap(({ rows, style, name }) => [
      Plot.areaY(rows, {
        x: 'draws',
        y1: time('low'),
        y2: time('high'),
        fill: style.colour,
        fillOpacity: 0.22,
        clip: true,
      }),
      Plot.lineY(rows, {
        x: 'draws',
        y: time('value'),
        stroke: style.colour,
        strokeWidth: 2.25,
        strokeDasharray: style.dash.join(' '),
        clip: true,
      }),
      Plot.text(rows.slice(-1), {
        x: 'draws',
        y: time('value'),
        text: () => name,
        dx: 8,
        textAnchor: 'start',
        fontWeight: 650,
        fill: style.colour,
      }),
    ]),
  }) as SVGSVGElement;
}

/** 10, 20, 40, …: as many as there is room for. */
function doublings(first: number, last: number, width: number): number[] {
  const ticks: number[] = [];
  for (let n = first; n <= last; n *= 2) ticks.push(n);
  const each = Math.ceil((ticks.length * 46) / Math.max(60, width - 132));
  return ticks.filter((_, i) => i % each === 0);
}

function figureText(estimate: Estimate, horizonDays: number): string {
  return `${reachText(estimate.value, horizonDays)} (${intervalText(estimate, horizonDays)})`;
}

function finding(looks: readonly RunningEstimate[], last: RunningEstimate, horizonDays: number): string {
  const [low, high] = rangeSince(looks, last.draws / 2, 'nineInTenDays', horizonDays);
  const now = `After ${last.draws} outages, nine in ten reach ${reachText(last.nineInTenDays.value, horizonDays)}`;
  const still = reachText(low, horizonDays) === reachText(high, horizonDays);
  if (looks.length < 3) return now;
  return still
    ? `${now}; since half of them the figure has not moved`
    : `${now}; since half of them the figure has moved between ${reachText(low, horizonDays)} and ${reachText(high, horizonDays)}`;
}

/** Least and greatest estimate from so many draws on; null: the horizon or more. */
function rangeSince(
  looks: readonly RunningEstimate[],
  draws: number,
  figure: Figure,
  horizonDays: number,
): [number | null, number | null] {
  const days = looks.filter((l) => l.draws >= draws).map((l) => l[figure].value ?? Infinity);
  const shown = (value: number) => (value === Infinity || value > horizonDays ? null : value);
  return [shown(Math.min(...days)), shown(Math.max(...days))];
}

function movedSentences(
  looks: readonly RunningEstimate[],
  last: RunningEstimate,
  horizonDays: number,
): string[] {
  return FIGURES.map(({ figure, name }) => {
    const [low, high] = rangeSince(looks, last.draws / 2, figure, horizonDays);
    return `From ${Math.ceil(last.draws / 2)} to ${last.draws} outages, the time that ${name} reach lay between ${reachText(low, horizonDays)} and ${reachText(high, horizonDays)}; its interval at the end: ${intervalText(last[figure], horizonDays)}.`;
  });
}

/** On the page about a dozen rows, in the file all of them. */
function table(looks: readonly RunningEstimate[], horizonDays: number): DataTable {
  const number = true;
  const each = Math.max(1, Math.ceil(looks.length / 12));
  const shown = looks.filter((_, i) => (looks.length - 1 - i) % each === 0);
  return {
    caption: 'Time reached, rounded down, with 95 % intervals, from the first so many outages.',
    columns: [
      { name: 'Outages' },
      { name: 'Nine in ten reach', number },
      { name: '95 % interval', number },
      { name: 'Half reach', number },
      { name: '95 % interval', number },
    ],
    rows: shown.map(({ draws, nineInTenDays: n, medianDays: m }) => [
      String(draws),
      reachCell(n.value, horizonDays),
      intervalCell(n, horizonDays),
      reachCell(m.value, horizonDays),
      intervalCell(m, horizonDays),
    ]),
    exact: looks.map(({ draws, nineInTenDays: n, medianDays: m }) => ({
      draws,
      nineInTenDays: n.value,
      nineInTenLow: n.low,
      nineInTenHigh: n.high,
      medianDays: m.value,
      medianLow: m.low,
      medianHigh: m.high,
    })),
  };
}
