import { longestLasting } from '../trials/longest-lasting.ts';
import type { StrategySummary, StudySummary } from '../trials/study-summary.ts';
import { daysDown, daysInterval, percent } from '../trials/days-in-words.ts';
import { byAlternative } from './render-headline.ts';
import { paragraph, toLeft, toRight, wrapLines } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

interface Column {
  readonly head: readonly [string, string];
  readonly width: number;
  cell(strategy: StrategySummary): string;
}

const LEAST_NAME = 15;
const STAR = '* ';
const INDENT = '  ';

/**
 * Table of strategies under each alternative: days reached, their interval, and chances. A star marks the longest. A
 * narrow terminal goes without the last columns.
 */
export function strategyTable(summary: StudySummary, look: TerminalLook, style: Style): string[] {
  const columns = columnsFitting(summary, look.width - LEAST_NAME - INDENT.length);
  const nameWidth = look.width - INDENT.length - columns.reduce((sum, { width }) => sum + width, 0);
  const groups = byAlternative(summary);
  return [
    ...[0, 1].map((line) =>
      style.quiet(
        ' '.repeat(INDENT.length + nameWidth) + columns.map((c) => toRight(c.head[line]!, c.width)).join(''),
      ),
    ),
    ...groups.flatMap((group) => [
      ...(groups.length > 1 ? paragraph(group[0]!.alternativeTitle, look.width).map(style.heading) : []),
      ...group.flatMap((strategy) =>
        row(strategy, columns, nameWidth, group.length > 1 && strategy === longestLasting(group), style),
      ),
    ]),
    '',
    ...notes(summary).flatMap((note) => paragraph(note, look.width, INDENT).map(style.quiet)),
  ];
}

function columnsFitting(summary: StudySummary, width: number): Column[] {
  const horizon = summary.horizonDays;
  const asked = (summary.strategies[0]?.reach ?? []).slice(-3).map(({ days }) => days);
  const all: Column[] = [
    { head: ['9 in 10', 'reach'], width: 9, cell: (s) => daysDown(s.nineInTenDays.value, horizon) },
    { head: ['95\u00a0%', 'interval'], width: 14, cell: (s) => daysInterval(s.nineInTenDays, horizon) },
    { head: ['half', 'reach'], width: 8, cell: (s) => daysDown(s.medianDays.value, horizon) },
    ...asked.map((days, i): Column => ({
      head: ['on after', `${days}\u00a0${days === 1 ? 'day' : 'days'}`],
      width: 9,
      cell: (s) => percent(s.reach.slice(-3)[i]!.chance.value),
    })),
  ];
  let used = 0;
  return all.filter((column) => (used += column.width) <= width);
}

function row(
  strategy: StrategySummary,
  columns: readonly Column[],
  nameWidth: number,
  longest: boolean,
  style: Style,
): string[] {
  const [first = '', ...more] = wrapLines(strategy.strategyTitle, nameWidth - 1);
  const line =
    (longest ? STAR : INDENT) +
    toLeft(first, nameWidth) +
    columns.map((c) => toRight(c.cell(strategy), c.width)).join('');
  return [longest ? style.strong(line) : line, ...more.map((part) => INDENT + part)];
}

function notes(summary: StudySummary): string[] {
  const days = daysDown(null, summary.horizonDays);
  const hidden = summary.strategies.some(({ nineInTenDays: n, medianDays: m }) =>
    [n.value, n.high, m.value].includes(null),
  );
  return [
    `Days until something essential (tier 1) goes without, rounded down, from ${summary.provenance.draws} simulated outages. “9 in 10 reach”: one in ten ends sooner. A star: lasts longest.`,
    ...(hidden
      ? [
          `${days}: the horizon. So many were still running when the study stopped looking that it cannot say how much longer.`,
        ]
      : []),
  ];
}
