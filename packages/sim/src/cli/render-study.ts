import { provenanceStamp } from '../trials/provenance-stamp.ts';
import type { StudySummary } from '../trials/study-summary.ts';
import { curveRows } from './render-curves.ts';
import { differenceSentences } from './render-differences.ts';
import { endLines } from './render-ends.ts';
import { headlineSentences } from './render-headline.ts';
import { paragraph } from './render-lines.ts';
import { overridesNote } from './render-overrides.ts';
import { sourceLines } from './render-sources.ts';
import { strategyTable } from './render-strategies.ts';
import { plainSigns, styleFor } from './render-style.ts';
import type { TerminalLook } from './render-style.ts';

/**
 * A study for a terminal: the answer, the table, the curves, why runs ended, what differs, and how to repeat it.
 * `cautions` are said before the last line. No line is longer than `look.width`. Colour only repeats what words and signs say.
 *
 * @returns lines ended by line feeds.
 */
export function renderStudy(
  summary: StudySummary,
  look: TerminalLook,
  cautions: readonly string[] = [],
): string {
  const style = styleFor(look);
  const prose = (texts: readonly string[], first = '') =>
    texts.flatMap((text) => paragraph(text, look.width, first));
  const bullets = differenceSentences(summary).flatMap((text) => paragraph(text, look.width, '- '));
  const note = paragraph(
    'In brackets: 95 % intervals. Means count each run up to the horizon.',
    look.width,
    '  ',
  ).map(style.quiet);
  const lines = [
    ...prose([summary.provenance.scenarioTitle]).map(style.heading),
    '',
    ...prose(headlineSentences(summary)).map(style.strong),
    '',
    ...strategyTable(summary, look, style),
    '',
    ...section('Share of outages still running', curveRows(summary, look, style), style.heading),
    ...section('Why they ended', endLines(summary, look, style), style.heading),
    ...section('Energy back', sourceLines(summary, look, style), style.heading),
    ...section(
      'The same outages, compared',
      [...bullets, ...(bullets.length > 0 ? note : [])],
      style.heading,
    ),
    ...cautions.flatMap((caution) => [...prose([caution]).map(style.strong), '']),
    ...prose([CAUTION]),
    '',
    ...prose([
      `To repeat these figures: ${provenanceStamp(summary.provenance)}; weather ${summary.provenance.weatherName}.`,
    ]).map(style.quiet),
    ...prose(overridesNote(look)).map(style.quiet),
  ];
  const text = `${lines.join('\n')}\n`.replaceAll('\u00a0', ' ');
  return look.ascii ? plainSigns(text) : text;
}

const CAUTION =
  'These are forecasts from a model of your description, not promises. If somebody’s health hangs on power, keep a second way ready and talk to the clinic, the supplier and the utility beforehand.';

function section(title: string, lines: readonly string[], heading: (text: string) => string): string[] {
  return lines.length === 0 ? [] : [heading(title), ...lines, ''];
}
