/**
 * What each input that nobody knows does to the days, moved alone from its low to its high.
 *
 * Observable Plot: bars to either side of one line, a row for each input, widest first.
 */
import * as Plot from '@observablehq/plot';
import { gainCells, percent, reachCell, reachText, type InputMatters, type Matters } from '@rideout/sim';
import { chartFrame, provenanceText } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { clockTimesIn, type Look } from './look.ts';
import { roomAround } from './room-around.ts';
import { barKey } from './series-key.ts';
import { timeAxis } from './time-axis.ts';
import { PLOT_STYLE } from './what-changes.ts';
import { LINE_PX, wrapped } from './wrapped-text.ts';

export interface InputChartOptions {
  readonly clock?: Look['clock'];
  /** Picture width, px. */
  readonly width: number;
}

interface Bar {
  readonly input: InputMatters;
  readonly id: string;
  readonly end: 'low' | 'high';
  /** Days; the horizon where it hides them. */
  readonly from: number;
  readonly to: number;
}

const BAR_PX = 14;
const BESIDE_PX = 26; // above a bar and below it, for one line of words
const TITLE = 13;
const ENDS = 12;
const FAMILY = 'system-ui, sans-serif';

/** Filled and outlined: told apart without colour. */
const LOOK = {
  low: { colour: 'var(--series-2)', opacity: 0.2, dash: '3 2' },
  high: { colour: 'var(--series-1)', opacity: 0.85, dash: '' },
} as const;

export function inputSwings(matters: Matters, { width, clock = 24 }: InputChartOptions): HTMLElement {
  const inputs = bySwing(matters).map((input) => ({
    ...input,
    low: clockTimesIn(input.low, clock),
    high: clockTimesIn(input.high, clock),
  }));
  const { horizonDays, middle, strategyTitle, alternativeTitle } = matters;
  return chartFrame({
    id: 'input-swings',
    title: finding(inputs, matters),
    note: `Time that nine outages in ten reach with “${strategyTitle}”, ${alternativeTitle}, when one input is held at its low or its high and the others are as they fall; what is fixed but not known stands in its middle. Upright line: nothing held, ${reachText(middle.nineInTenDays.value, horizonDays)}.`,
    picture: picture(inputs, matters, width),
    key: [
      { sample: barKey(LOOK.low), text: 'at its low' },
      { sample: barKey(LOOK.high), text: 'at its high' },
    ],
    sentences: inputs.map((input) => sentence(input, horizonDays)),
    table: table(inputs, horizonDays),
    provenance: baseRowsText(matters),
  });
}

/** Provenance of both measures: what is counted are base rows, each of about thirty runs. */
export function baseRowsText({ provenance }: Matters): string {
  return provenanceText(provenance).replace(/simulated outages?/, 'base rows');
}

/** Widest swing first. */
function bySwing({ inputs, horizonDays }: Matters): InputMatters[] {
  return [...inputs].sort((a, b) => width(b, horizonDays) - width(a, horizonDays));
}

function width({ nineInTen: { lowDays, highDays } }: InputMatters, horizonDays: number): number {
  return Math.abs((highDays ?? horizonDays) - (lowDays ?? horizonDays));
}

function picture(
  inputs: readonly InputMatters[],
  { middle, horizonDays }: Matters,
  pictureWidth: number,
): SVGSVGElement {
  const within = (days: number | null) => days ?? horizonDays;
  const base = within(middle.nineInTenDays.value);
  const bars = inputs.flatMap((input): Bar[] => [
    { input, id: input.id, end: 'low', from: base, to: within(input.nineInTen.lowDays) },
    { input, id: input.id, end: 'high', from: base, to: within(input.nineInTen.highDays) },
  ]);
  const [first, last] = roomAround([base, ...bars.map((bar) => bar.to)], horizonDays);
  const { word, perDay } = timeAxis(last);
  const look = (bar: Bar) => LOOK[bar.end];
  const line = (text: string, weight: number, sizePx: number) =>
    wrapped(text, `${weight} ${sizePx}px ${FAMILY}`, pictureWidth - 22);
  const titles = inputs.map((input) => line(`${input.title}: ${daysAt(input, horizonDays)}`, 650, TITLE));
  const ends = inputs.map(({ low, high }) => line(`${low} → ${high}`, 400, ENDS));
  const insetTop = besidePx(titles);
  const insetBottom = besidePx(ends);
  const rowPx = insetTop + BAR_PX + insetBottom;
  const linesOf = (lines: readonly (readonly string[])[]) => (input: InputMatters) =>
    lines[inputs.indexOf(input)]!.join('\n');
  return Plot.plot({
    width: pictureWidth,
    height: 46 + inputs.length * rowPx,
    marginLeft: 14,
    marginRight: 24,
    marginTop: 4,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      domain: [first * perDay, last * perDay],
      label: `${word} that nine outages in ten reach`,
      labelArrow: 'none',
      labelAnchor: 'center',
      grid: true,
      ticks: Math.max(2, pictureWidth / 110),
    },
    y: { axis: null, domain: inputs.map(({ id }) => id), padding: 0 },
    marks: [
      Plot.barX(bars, {
        y: 'id',
        x1: (bar: Bar) => Math.min(bar.from, bar.to) * perDay,
        x2: (bar: Bar) => Math.max(bar.from, bar.to) * perDay,
        fill: (bar: Bar) => look(bar).colour,
        fillOpacity: (bar: Bar) => look(bar).opacity,
        stroke: (bar: Bar) => look(bar).colour,
        insetTop,
        insetBottom,
      }),
      Plot.ruleX([base * perDay], { stroke: 'var(--ink)', strokeWidth: 1.5 }),
      Plot.text(inputs, {
        ...NAME,
        y: 'id',
        dy: insetTop - rowPx / 2 - 5,
        lineAnchor: 'bottom',
        fontWeight: 650,
        text: linesOf(titles),
      }),
      Plot.text(inputs, {
        ...NAME,
        y: 'id',
        dy: rowPx / 2 - insetBottom + 4,
        lineAnchor: 'top',
        fontSize: ENDS,
        text: linesOf(ends),
      }),
    ],
  }) as SVGSVGElement;
}

const NAME = {
  frameAnchor: 'left',
  dx: 4,
  textAnchor: 'start',
  fill: 'var(--ink)',
  stroke: 'var(--paper)',
  strokeWidth: 4,
} as const;

/** Room for the words beside a bar, by the one that takes most lines. */
function besidePx(words: readonly (readonly string[])[]): number {
  return BESIDE_PX + (Math.max(1, ...words.map((lines) => lines.length)) - 1) * LINE_PX;
}

function daysAt({ nineInTen: { lowDays, highDays } }: InputMatters, horizonDays: number): string {
  const [low, high] = [reachText(lowDays, horizonDays), reachText(highDays, horizonDays)];
  return low === high ? `${low} either way` : `${low} to ${high}`;
}

function finding([first, second]: readonly InputMatters[], { horizonDays, middle }: Matters): string {
  if (!first || width(first, horizonDays) === 0)
    return `No input by itself moves the ${reachText(middle.nineInTenDays.value, horizonDays)} that nine outages in ten reach`;
  const next =
    second && width(second, horizonDays) > 0
      ? `, then “${second.title}” (${daysAt(second, horizonDays)})`
      : '';
  return `“${first.title}” moves the answer most: ${daysAt(first, horizonDays)}${next}`;
}

function sentence(input: InputMatters, horizonDays: number): string {
  const kind = input.isValue ? 'fixed but not known: it can be measured' : 'new in every outage';
  return `${input.title} (${kind}): ${reachText(input.nineInTen.lowDays, horizonDays)} at its low (${input.low}), ${reachText(input.nineInTen.highDays, horizonDays)} at its high (${input.high}).`;
}

function table(inputs: readonly InputMatters[], horizonDays: number): DataTable {
  const number = true;
  return {
    caption:
      'Time that nine outages in ten reach with the input at its low and at its high, the difference over the same outages with its 95 % interval, and the shares of the variance of the days. “Hidden”: beyond the simulated time.',
    columns: [
      { name: 'Input' },
      { name: 'Low' },
      { name: 'High' },
      { name: 'At low', number },
      { name: 'At high', number },
      { name: 'Difference', number },
      { name: 'From', number },
      { name: 'To', number },
      { name: 'Variance, alone', number },
      { name: 'Variance, in all', number },
    ],
    rows: inputs.map(({ title, low, high, nineInTen: n, firstOrder, total }) => [
      title,
      low,
      high,
      reachCell(n.lowDays, horizonDays),
      reachCell(n.highDays, horizonDays),
      ...gainCells(n.differenceDays),
      percent(firstOrder.value),
      percent(total.value),
    ]),
    exact: inputs.map(
      ({ id, title, isValue, low, high, nineInTen: n, median: m, firstOrder: f, total: t }) => ({
        input: id,
        title,
        kind: isValue ? 'value' : 'chance',
        low,
        high,
        nineInTenLowDays: n.lowDays,
        nineInTenHighDays: n.highDays,
        nineInTenDifferenceDays: n.differenceDays.value,
        nineInTenDifferenceLow: n.differenceDays.low,
        nineInTenDifferenceHigh: n.differenceDays.high,
        medianDifferenceDays: m.differenceDays.value,
        firstOrder: f.value,
        firstOrderLow: f.low,
        firstOrderHigh: f.high,
        total: t.value,
        totalLow: t.low,
        totalHigh: t.high,
      }),
    ),
  };
}
