import { longestLasting } from '../trials/longest-lasting.ts';
import type { StrategySummary, StudySummary } from '../trials/study-summary.ts';
import { intervalCell, percent, reachCell } from '../trials/days-in-words.ts';
import { underTitles } from './by-alternative.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';
import { terminalTable, type Column } from './render-table.ts';

const LEAST_NAME = 15;
const STAR = '* ';
const INDENT = '  ';

/**
 * Table of strategies under each alternative: days reached, their interval, and chances. A star marks the longest.
 */
export function strategyTable(summary: StudySummary, look: TerminalLook, style: Style): string[] {
  const { heads, row } = terminalTable(columnsOf(summary), LEAST_NAME, INDENT.length, look, style);
  return [
    ...heads,
    ...underTitles(summary.strategies, look, style.heading, (group) => {
      const longest = group.length > 1 ? longestLasting(group) : undefined;
      return group.flatMap((strategy) => {
        if (strategy !== longest) return row(strategy, strategy.strategyTitle);
        const [first, ...more] = row(strategy, strategy.strategyTitle, STAR);
        return [style.strong(first!), ...more];
      });
    }),
    '',
    ...notes(summary).flatMap((note) => paragraph(note, look.width, INDENT).map(style.quiet)),
  ];
}

function columnsOf(summary: StudySummary): Column<StrategySummary>[] {
  const horizon = summary.horizonDays;
  const asked = (summary.strategies[0]?.reach ?? []).slice(-3).map(({ days }) => days);
  return [
    { head: ['9 in 10', 'reach'], width: 9, cell: (s) => reachCell(s.nineInTenDays.value, horizon) },
    { head: ['95\u00a0%', 'interval'], width: 17, cell: (s) => intervalCell(s.nineInTenDays, horizon) },
    { head: ['half', 'reach'], width: 8, cell: (s) => reachCell(s.medianDays.value, horizon) },
    ...asked.map((days, i): Column<StrategySummary> => ({
      head: ['on after', `${days}\u00a0${days === 1 ? 'day' : 'days'}`],
      width: 9,
      cell: (s) => percent(s.reach.slice(-3)[i]!.chance.value),
    })),
  ];
}

function notes(summary: StudySummary): string[] {
  const horizon = reachCell(null, summary.horizonDays);
  const hidden = summary.strategies.some(({ nineInTenDays: n, medianDays: m }) =>
    [n.value, n.high, m.value].includes(null),
  );
  return [
    `Time until something essential (tier 1) goes without, rounded down (d: days, h: hours, min: minutes), from ${summary.provenance.draws} simulated outages. “9 in 10 reach”: one in ten ends sooner. A star: lasts longest.`,
    ...(hidden
      ? [
          `${horizon}: the horizon. So many were still running when the study stopped looking that it cannot say how much longer.`,
        ]
      : []),
  ];
}
