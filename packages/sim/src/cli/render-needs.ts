import type { NeedFigures, NeedsAnswer } from '../advice/needs/needs.ts';
import { atLeastThisLong, percent, reachCell } from '../trials/days-in-words.ts';
import { byAlternative, underTitles } from './by-alternative.ts';
import { counted } from './counted.ts';
import { renderFramed } from './render-frame.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';
import { terminalTable, type Column } from './render-table.ts';

type Need = NeedsAnswer['needs'][number];

/** Needs for a terminal: which fails first, a block for each, how to read it, how to repeat it. */
export function renderNeeds(answer: NeedsAnswer, look: TerminalLook): string {
  return renderFramed(
    {
      provenance: answer.provenance,
      about: ['What a family would notice: each need under each strategy.'],
      headline: headline(answer),
      body: (style) => [
        ...answer.needs.flatMap((need) => [...block(answer, need, look, style), '']),
        ...notes(answer).flatMap((text) => paragraph(text, look.width, '  ').map(style.quiet)),
      ],
      caution:
        'Forecasts from a model of your description, not promises: a thermometer in the food decides, not this table; when in doubt, throw it out. For medical equipment ask the supplier what to do when power fails, and keep a second way ready.',
    },
    look,
  );
}

/** For each alternative, the strategy under which the first need to give way holds longest, and what that need is. */
function headline({ needs, figures, horizonDays }: NeedsAnswer): string[] {
  const alternatives = byAlternative(figures);
  return alternatives.map((here) => {
    const weakest = [...new Set(here.map((f) => f.strategyId))].map((strategy) =>
      here.filter((f) => f.strategyId === strategy).reduce((a, b) => (reach(b) < reach(a) ? b : a)),
    );
    const best = weakest.reduce((a, b) => (reach(b) > reach(a) ? b : a));
    const said = (text: string) =>
      alternatives.length > 1
        ? `With “${best.alternativeTitle}”: ${text}`
        : text.replace(/^[a-z]/, (c) => c.toUpperCase());
    const title = needs.find((need) => need.id === best.needId)!.title;
    if (best.nineInTenDays.value === null)
      return said(
        `under “${best.strategyTitle}”, every need is met for all ${horizonDays} days in nine outages of ten.`,
      );
    const held = `at least ${atLeastThisLong(best.nineInTenDays.value)} in nine outages of ten`;
    return said(
      keepsEveryNeedLongest(best.strategyId, here)
        ? `“${best.strategyTitle}” keeps every need longest; “${title}” gives way first, and holds ${held}.`
        : `the first need to give way is latest under “${best.strategyTitle}”: “${title}” holds ${held}. Another strategy keeps some need longer.`,
    );
  });
}

function keepsEveryNeedLongest(strategyId: string, here: readonly NeedFigures[]): boolean {
  const own = here.filter((f) => f.strategyId === strategyId);
  return own.every((mine) => here.every((f) => f.needId !== mine.needId || reach(f) <= reach(mine)));
}

const reach = (f: NeedFigures): number => f.nineInTenDays.value ?? Infinity;

const LEAST_NAME = 22;
const INDENT = 2;

function block(answer: NeedsAnswer, need: Need, look: TerminalLook, style: Style): string[] {
  const { heads, row } = terminalTable(columnsOf(answer.horizonDays, need), LEAST_NAME, INDENT, look, style);
  const figures = answer.figures.filter((f) => f.needId === need.id);
  const plain = (text: string) => text;
  return [
    ...paragraph(`${need.title}: fails when ${need.failsWhen}`, look.width).map(style.heading),
    ...heads,
    ...underTitles(figures, look, plain, (group) => group.flatMap((f) => row(f, f.strategyTitle))),
  ];
}

function columnsOf(horizonDays: number, need: Need): Column<NeedFigures>[] {
  return [
    { head: ['never', 'fails'], width: 7, cell: (f) => percent(f.neverFails.value) },
    { head: ['9 in 10', 'hold'], width: 8, cell: (f) => reachCell(f.nineInTenDays.value, horizonDays) },
    { head: ['half', 'hold'], width: 8, cell: (f) => reachCell(f.medianDays.value, horizonDays) },
    { head: ['unmet', 'mean, h'], width: 8, cell: (f) => tenths(f.hoursUnmet.mean) },
    { head: ['longest', '9/10, h'], width: 8, cell: (f) => tenths(f.longestHours.nineInTen) },
    ...depthColumns(need),
  ];
}

/** What is worth telling besides hours depends on the need. */
function depthColumns({ measure }: Need): Column<NeedFigures>[] {
  const extreme = (f: NeedFigures) => (f.extreme === null ? '' : tenths(f.extreme.oneInTen));
  const depth = (f: NeedFigures) => (f.depth === null ? '' : tenths(f.depth.mean));
  switch (measure) {
    case 'power':
      return [];
    case 'water':
      return [
        { head: ['short', 'mean, L'], width: 8, cell: depth },
        {
          head: ['raised', 'L/p/d'],
          width: 8,
          cell: (f) => (f.litresPerPersonPerDay === null ? '' : f.litresPerPersonPerDay.toFixed(0)),
        },
      ];
    default:
      return [
        { head: ['°C·h', 'mean'], width: 8, cell: depth },
        { head: [measure === 'warmth' ? 'coldest' : 'warmest', '1/10, °C'], width: 9, cell: extreme },
      ];
  }
}

const tenths = (value: number): string => value.toFixed(1).replace('-', '−');

function notes({ provenance, horizonDays }: NeedsAnswer): string[] {
  return [
    `“Never fails”: share of ${counted(provenance.draws, 'outage')} in which it held for ${counted(horizonDays, 'day')}. “Hold”: time until it first fails, rounded down (d: days, h: hours, min: minutes); one in ten, or half, fail sooner.`,
    '“Unmet”: all hours without or past the limit, failed or not. “Longest”: of them in a row; one outage in ten has a longer one. °C·h: degree-hours past the limit. “1/10”: one outage in ten goes further.',
  ];
}
