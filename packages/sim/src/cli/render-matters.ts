import type { InputMatters, Matters } from '../advice/matters/matters.ts';
import { percent, reachCell, reachText } from '../trials/days-in-words.ts';
import { gainLength, gainCells, gainWithLimitsCell } from '../trials/gains-in-words.ts';
import type { Estimate } from '../trials/study-summary.ts';
import { renderFramed } from './render-frame.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';
import { terminalTable, type Column } from './render-table.ts';

/** What matters, for a terminal: the largest, the table, how to read it, how to repeat it. */
export function renderMatters(answer: Matters, look: TerminalLook): string {
  return renderFramed(
    {
      provenance: answer.provenance,
      about: [`What matters for the days: “${answer.alternativeTitle}”, “${answer.strategyTitle}”.`],
      headline: headline(answer),
      body: (style) => [...table(answer, look, style), '', ...notes(answer, look).map(style.quiet)],
      caution:
        'Ranges are what you said or our defaults, not what your house has: a value that matters and can be measured is worth an evening with a meter.',
    },
    look,
  );
}

function headline({ inputs, horizonDays, meanDays, sdDays, middle, togetherFraction }: Matters): string[] {
  const [first, second] = inputs;
  if (first === undefined || (first.total.value ?? 0) <= 0)
    return ['Nothing that is not known here moves the days: every outage lasted the same.'];
  const names = [first, second].flatMap((input) =>
    input === undefined ? [] : `${input.title} (${shareText(input.total)})`,
  );
  const measurable = inputs.find(({ isValue }) => isValue);
  return [
    `Over all that is not known, ${gainLength(meanDays)} on average, give or take ${gainLength(sdDays)}; nine outages in ten reach ${reachText(middle.nineInTenDays.value, horizonDays)} with every value in the middle.`,
    `The spread comes most of all from ${names.join(', then ')}.`,
    ...(measurable === undefined
      ? []
      : [
          `Of the house’s own figures, “${measurable.title}” has the largest part (${shareText(measurable.total)}).`,
        ]),
    ...(togetherFraction !== null && togetherFraction > 0.3
      ? [
          `About ${percent(Math.min(1, togetherFraction))} of the spread belongs to no input alone: it takes two together, such as a dull sky and a late hour.`,
        ]
      : []),
  ];
}

const LEAST_NAME = 15;

function table(answer: Matters, look: TerminalLook, style: Style): string[] {
  const { heads, row } = terminalTable(columnsOf(answer.horizonDays), LEAST_NAME, 0, look, style);
  return [
    ...heads,
    ...answer.inputs.flatMap((input) => {
      const ends = paragraph(`from ${input.low} to ${input.high}`, look.width, '  ');
      return [...row(input, input.title), ...ends.map(style.quiet)];
    }),
  ];
}

function columnsOf(horizonDays: number): Column<InputMatters>[] {
  return [
    { head: ['9 in 10', 'at low'], width: 8, cell: (i) => reachCell(i.nineInTen.lowDays, horizonDays) },
    { head: ['9 in 10', 'at high'], width: 8, cell: (i) => reachCell(i.nineInTen.highDays, horizonDays) },
    {
      head: ['high less low', '(95\u00a0%)'],
      width: 25,
      cell: (i) => differenceText(i.nineInTen.differenceDays),
    },
    { head: ['share of spread', 'in all (95\u00a0%)'], width: 17, cell: (i) => shareWithLimits(i.total) },
    { head: ['', 'alone'], width: 7, cell: (i) => shareText(i.firstOrder) },
  ];
}

/** Where the horizon hides a side, what is known of the difference. */
function differenceText(difference: Estimate): string {
  const { value, low, high } = difference;
  if (value !== null) return gainWithLimitsCell(difference);
  const [hidden, from, to] = gainCells(difference);
  if (low !== null && low > 0) return `${from} or more`;
  return high !== null && high < 0 ? `${to} or beyond` : hidden;
}

/** Estimates of shares may fall a little outside 0…1; nobody is told so. */
function shareText({ value }: Estimate): string {
  return value === null ? '' : percent(Math.min(1, Math.max(0, value)));
}

function shareWithLimits(share: Estimate): string {
  if (share.low === null || share.high === null) return shareText(share);
  const whole = (value: number) => Math.round(100 * Math.min(1, Math.max(0, value)));
  return `${shareText(share)} (${whole(share.low)} to ${whole(share.high)})`;
}

function notes({ horizonDays, hiddenFraction, provenance }: Matters, look: TerminalLook): string[] {
  const texts = [
    '“9 in 10”: time that nine outages in ten reach with this input held at its low or its high, values in the middle, chance as it falls, the same draws.',
    'Share of spread: of the variance of the days over everything that is not known; “in all” with everything the input does together with others (so shares add to more than 100 %), “alone” without (Sobol’ indices).',
    ...(hiddenFraction > 0
      ? [
          `${percent(hiddenFraction)} of the outages were still running after ${horizonDays} days: what moves the days beyond that does not count here.`,
        ]
      : []),
    `${provenance.draws} rows; four times as many (--draws) halve the intervals.`,
  ];
  return texts.flatMap((text) => paragraph(text, look.width, '  '));
}
