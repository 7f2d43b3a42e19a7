/**
 * What to buy in which order: the days reached at the start and after each rung, with what was paid until then.
 *
 * Observable Plot: a dot, a bar and a figure on each plain row, in the order of buying.
 */
import * as Plot from '@observablehq/plot';
import {
  clearRungs,
  gainCells,
  intervalCell,
  intervalText,
  isClear,
  reachCell,
  reachText,
  type LadderAnswer,
  type LadderStand,
} from '@rideout/sim';
import { chartFrame } from './chart-frame.ts';
import { counted } from './counted.ts';
import type { DataTable } from './data-table.ts';
import { drawsToTell, moneyText, restWords, rungGain, shareWords } from './ladder-words.ts';
import { tooFewEnding } from './outage-count.ts';
import { intervalKey } from './series-key.ts';
import { seriesStyle, type SeriesStyle } from './series-style.ts';
import { timeAxis } from './time-axis.ts';
import { PLOT_STYLE } from './what-changes.ts';

export interface LadderRungsOptions {
  /** Picture width, px. */
  readonly width: number;
}

interface Row {
  readonly id: string;
  readonly name: string;
  /** What it costs and what it brings. */
  readonly deal: string;
  readonly stand: LadderStand;
  readonly style: SeriesStyle;
}

const ROW_PX = 78;
const CLEAR = seriesStyle(0);
const UNCLEAR: SeriesStyle = { ...seriesStyle(5), marker: 'square' }; // told apart by more than colour

export function ladderRungs(answer: LadderAnswer, { width }: LadderRungsOptions): HTMLElement {
  const rows = ladderRows(answer);
  return chartFrame({
    id: 'ladder-rungs',
    title: `${finding(answer)}${tooFewEnding(drawsToTell(answer))}`,
    note: `Time that ${shareWords(answer.confidence)} reach, from the start and after each rung, with the best strategy at hand. Bars: 95\u00a0% interval. An arrow: as long as was simulated, or longer. Each gain is told on the same outages as the rung before, and on others than those that chose the order.`,
    picture: picture(rows, answer, width),
    key: [
      { sample: intervalKey(CLEAR), text: 'the start, and rungs whose gain is clear' },
      { sample: intervalKey(UNCLEAR), text: 'rungs whose gain is not clear in the days counted' },
    ],
    sentences: rows.map(({ name, deal, stand }) => sentence(`${name} (${deal})`, stand, answer)),
    table: table(answer),
    provenance: answer.provenance,
  });
}

/** The start, then every rung; a rung looks clear when it is so in the days counted. */
export function ladderRows(answer: Pick<LadderAnswer, 'start' | 'rungs' | 'currency'>): Row[] {
  const { start, rungs } = answer;
  return [
    { id: '0', name: start.title, deal: 'the start', stand: start, style: CLEAR },
    ...rungs.map((rung, i) => ({
      id: String(i + 1),
      name: `${i + 1}. ${rung.title}`,
      deal: `${moneyText(rung.price, answer)}: ${rungGain(rung)}`,
      stand: rung,
      style: isClear(rung.told) ? CLEAR : UNCLEAR,
    })),
  ];
}

function picture(rows: readonly Row[], { horizonDays }: LadderAnswer, width: number): SVGSVGElement {
  const within = (days: number | null) => days ?? horizonDays;
  const last = Math.min(
    horizonDays,
    Math.max(0.25, ...rows.map(({ stand }) => within(stand.days.high))) * 1.05,
  );
  const { word, perDay } = timeAxis(last);
  const at = (of: 'value' | 'low' | 'high') => (row: Row) => within(row.stand.days[of]) * perDay;
  const colour = (row: Row) => row.style.colour;
  const hidden = (row: Row) => row.stand.days.value === null;
  return Plot.plot({
    width,
    height: 46 + rows.length * ROW_PX,
    marginLeft: 14,
    marginRight: rows.some(hidden) ? 124 : 76,
    marginTop: 4,
    marginBottom: 40,
    style: PLOT_STYLE,
    x: {
      domain: [0, last * perDay],
      label: `${word} reached`,
      labelArrow: 'none',
      labelAnchor: 'center',
      grid: true,
      ticks: Math.max(2, width / 90),
    },
    y: { axis: null, domain: rows.map(({ id }) => id), padding: 0.5 },
    symbol: { type: 'identity' },
    marks: [
      Plot.ruleX([0], { stroke: 'var(--edge)' }),
      Plot.text(rows, {
        y: 'id',
        frameAnchor: 'left',
        dx: 8,
        dy: -11,
        textAnchor: 'start',
        fontWeight: 600,
        text: 'name',
        lineWidth: width / 17,
        lineAnchor: 'bottom',
      }),
      Plot.text(rows, { y: 'id', frameAnchor: 'left', dx: 8, dy: -1, textAnchor: 'start', text: 'deal' }),
      Plot.link(rows, { x1: at('low'), x2: at('high'), y1: 'id', y2: 'id', stroke: colour, ...BAR }),
      Plot.dot(rows, {
        x: at('value'),
        y: 'id',
        r: 5.5,
        dy: 18,
        fill: colour,
        stroke: 'var(--paper)',
        symbol: (row: Row) => row.style.marker,
        filter: (row: Row) => !hidden(row),
      }),
      Plot.text(rows, { x: at('value'), y: 'id', dy: 18, text: () => '▶', fill: colour, filter: hidden }),
      Plot.text(rows, {
        x: at('high'),
        y: 'id',
        dx: 10,
        dy: 18,
        textAnchor: 'start',
        text: (row: Row) => reachText(row.stand.days.value, horizonDays),
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
      }),
    ],
  }) as SVGSVGElement;
}

const BAR = { strokeWidth: 7, strokeOpacity: 0.35, strokeLinecap: 'butt', dy: 18 } as const;

function finding(answer: LadderAnswer): string {
  const { start, rungs, horizonDays } = answer;
  const clear = clearRungs(rungs);
  const end = clear.at(-1);
  const reach = (stand: LadderStand) => reachText(stand.days.value, horizonDays);
  if (!end) return `From ${reach(start)} no step was found that clearly gains anything`;
  const up = clear.length;
  return `From ${reach(start)} to ${reach(end)} in ${counted(up, 'rung')}, for ${end.paid === 0 ? 'no money' : moneyText(end.paid, answer)} in all${restWords(rungs.length - up)}`;
}

function sentence(name: string, { days, strategyTitle }: LadderStand, { horizonDays }: LadderAnswer): string {
  return `${name}. ${reachText(days.value, horizonDays)} (${intervalText(days, horizonDays)}) with “${strategyTitle}”.`;
}

function table(answer: LadderAnswer): DataTable {
  const number = true;
  const { start, rungs, horizonDays } = answer;
  const stand = ({ strategyTitle, days }: LadderStand) => [
    strategyTitle,
    reachCell(days.value, horizonDays),
    intervalCell(days, horizonDays),
  ];
  return {
    caption:
      'Time reached, rounded down, and gained over the rung before on the same outages, with 95 % intervals. “Hidden”: beyond the simulated time.',
    columns: [
      { name: 'Rung' },
      { name: 'Price', number },
      { name: 'Paid in all', number },
      { name: 'Strategy' },
      { name: 'Reached', number },
      { name: '95 % interval', number },
      { name: 'Gain', number },
      { name: 'From', number },
      { name: 'To', number },
      { name: 'A day costs', number },
    ],
    rows: [
      [start.title, '', '', ...stand(start), '', '', '', ''],
      ...rungs.map((rung) => [
        rung.title,
        moneyText(rung.price, answer),
        moneyText(rung.paid, answer),
        ...stand(rung),
        ...gainCells(rung.gainDays),
        rung.pricePerDay === null ? '' : moneyText(rung.pricePerDay, answer),
      ]),
    ],
    exact: rungs.map((rung, i) => ({
      rung: i + 1,
      steps: rung.stepIds.join(' '),
      price: rung.price,
      paid: rung.paid,
      strategy: rung.strategyId,
      days: rung.days.value,
      low: rung.days.low,
      high: rung.days.high,
      gainDays: rung.gainDays.value,
      gainLow: rung.gainDays.low,
      gainHigh: rung.gainDays.high,
      gainMeanDays: rung.gainMeanDays.value,
      pricePerDay: rung.pricePerDay,
      told: rung.told,
    })),
  };
}
