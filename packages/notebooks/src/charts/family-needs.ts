/**
 * Each need as a family would notice it: how long before it first fails, and for how long it then does, by strategy.
 *
 * Observable Plot: the strips of "what changes", a need in the place of a strategy and a strategy to each line.
 */
import {
  intervalCell,
  intervalText,
  percent,
  reachCell,
  reachText,
  type NeedFigures,
  type NeedsAnswer,
} from '@rideout/sim';
import { cellColumns } from './cell-columns.ts';
import { chartFrame } from './chart-frame.ts';
import type { DataTable } from './data-table.ts';
import { degreesIn, type Look } from './look.ts';
import { tooFewEnding } from './outage-count.ts';
import { alternativeShown, type Shown } from './nine-in-ten-words.ts';
import { intervalKey } from './series-key.ts';
import { seriesStyle } from './series-style.ts';
import { strips, type StripLine } from './what-changes.ts';

export interface FamilyNeedsOptions extends Shown {
  readonly temperature?: Look['temperature'];
  /** Picture width, px. */
  readonly width: number;
}

export function familyNeeds(answer: NeedsAnswer, options: FamilyNeedsOptions): HTMLElement {
  const { horizonDays, provenance, needs } = answer;
  const { temperature = 'C' } = options;
  const figures = shownFigures(answer, options);
  const lines = figures.map((figure) => lineOf(figure, answer, options));
  const strategies = [...new Map(lines.map((line) => [line.alternative, line])).values()];
  return chartFrame({
    id: 'family-needs',
    title: needsFinding(figures, answer),
    note: 'Time until a need first fails, which nine outages in ten reach, by what a family would notice; what counts as failing stands in the words below. Bars: 95\u00a0% interval. An arrow: as long as was simulated, or longer.',
    picture: strips(lines, horizonDays, options.width),
    key: strategies.map(({ style, name }) => ({ sample: intervalKey(style), text: name })),
    sentences: [
      ...needs.map(
        ({ title, failsWhen }) => `${title} fails when: ${degreesIn(failsWhen, { temperature })}.`,
      ),
      ...figures.map((figure) => sentence(figure, answer)),
    ],
    table: table(figures, answer),
    provenance,
    alternative: alternativeShown(answer.figures, options),
  });
}

function shownFigures({ figures }: NeedsAnswer, { alternativeId, strategyIds }: Shown): NeedFigures[] {
  return figures.filter(
    (f) => f.alternativeId === alternativeId && (!strategyIds || strategyIds.includes(f.strategyId)),
  );
}

/** A strategy keeps the look that its place in the study gives it. */
function lineOf(figure: NeedFigures, answer: NeedsAnswer, { alternativeId }: Shown): StripLine {
  const { horizonDays, figures } = answer;
  const all = [...new Set(figures.filter((f) => f.alternativeId === alternativeId).map((f) => f.strategyId))];
  const within = (days: number | null) => days ?? horizonDays;
  const { value, low, high } = figure.nineInTenDays;
  return {
    strategy: figure.needId,
    stripName: titleOf(figure, answer),
    alternative: figure.strategyId,
    name: figure.strategyTitle,
    style: seriesStyle(all.indexOf(figure.strategyId)),
    days: within(value),
    low: within(low),
    high: within(high),
    beyond: value === null,
    text: reachText(value, horizonDays),
  };
}

function titleOf({ needId }: NeedFigures, { needs }: NeedsAnswer): string {
  return needs.find((need) => need.id === needId)!.title;
}

/** What the chart shows, in a sentence without its full stop. */
export function needsFinding(figures: readonly NeedFigures[], answer: NeedsAnswer): string {
  if (figures.length === 0) return 'No strategy is chosen';
  return `${finding(figures, answer)}${tooFewEnding(answer.provenance.draws)}`;
}

function finding(figures: readonly NeedFigures[], answer: NeedsAnswer): string {
  const days = (f: NeedFigures) => f.nineInTenDays.value ?? Infinity;
  const first = [...figures].sort((a, b) => days(a) - days(b))[0]!;
  if (days(first) === Infinity) return 'No need fails within the time simulated, in nine outages in ten';
  const best = [...figures].filter((f) => f.needId === first.needId).sort((a, b) => days(b) - days(a))[0]!;
  const title = titleOf(first, answer);
  const reach = (f: NeedFigures) => reachText(f.nineInTenDays.value, answer.horizonDays);
  return best === first
    ? `First to fail is “${title}”, after ${reach(first)} with “${first.strategyTitle}”`
    : `First to fail is “${title}”: after ${reach(first)} with “${first.strategyTitle}”, ${reach(best)} with “${best.strategyTitle}”`;
}

function sentence(figure: NeedFigures, answer: NeedsAnswer): string {
  const { strategyTitle, nineInTenDays, neverFails, hoursUnmet } = figure;
  const { horizonDays } = answer;
  return `${titleOf(figure, answer)}, ${strategyTitle}: ${reachText(nineInTenDays.value, horizonDays)} (${intervalText(nineInTenDays, horizonDays)}); never fails in ${percent(neverFails.value)} of outages; ${hoursUnmet.mean.toFixed(1)}\u00a0hours unmet in a mean outage.`;
}

function table(figures: readonly NeedFigures[], answer: NeedsAnswer): DataTable {
  const number = true;
  const { horizonDays } = answer;
  return {
    caption:
      'Time until a need first fails, rounded down, with 95 % intervals; hours it goes unmet to the end of the simulation.',
    columns: [
      { name: 'Need' },
      { name: 'Strategy' },
      { name: 'Nine in ten reach', number },
      { name: '95 % interval', number },
      { name: 'Never fails', number },
      { name: 'Hours unmet, mean', number },
      { name: 'one outage in ten', number },
      { name: 'Longest in a row, one in ten', number },
    ],
    rows: figures.map((f) => [
      titleOf(f, answer),
      f.strategyTitle,
      reachCell(f.nineInTenDays.value, horizonDays),
      intervalCell(f.nineInTenDays, horizonDays),
      percent(f.neverFails.value),
      f.hoursUnmet.mean.toFixed(1),
      f.hoursUnmet.nineInTen.toFixed(1),
      f.longestHours.nineInTen.toFixed(1),
    ]),
    exact: figures.map((f) => ({
      ...cellColumns(f),
      need: f.needId,
      nineInTenDays: f.nineInTenDays.value,
      low: f.nineInTenDays.low,
      high: f.nineInTenDays.high,
      medianDays: f.medianDays.value,
      neverFails: f.neverFails.value,
      meanHoursUnmet: f.hoursUnmet.mean,
      nineInTenHoursUnmet: f.hoursUnmet.nineInTen,
      nineInTenLongestHours: f.longestHours.nineInTen,
    })),
  };
}
