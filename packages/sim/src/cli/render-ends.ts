import type { EndCause } from '../trials/outcome-rows.ts';
import type { StrategySummary, StudySummary } from '../trials/study-summary.ts';
import { percent } from '../trials/days-in-words.ts';
import { underTitles } from './by-alternative.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

/** Why runs ended, a line or two per strategy. */
export function endLines(summary: StudySummary, look: TerminalLook, style: Style): string[] {
  return underTitles(summary.strategies, look, style.heading, (group) =>
    group.flatMap((strategy) =>
      paragraph(`${strategy.strategyTitle}: ${causes(strategy)}.`, look.width, '- '),
    ),
  );
}

function causes({ ends }: StrategySummary): string {
  return ends
    .map(
      ({ cause, unitId, fraction }) =>
        `${inWords(cause)}${unitId === null ? '' : ` (${unitId})`} ${percent(fraction)}`,
    )
    .join(', ');
}

function inWords(cause: EndCause): string {
  return cause === 'still running' ? 'still running at the end of the study' : cause;
}
