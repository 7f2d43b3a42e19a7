import type { StudySummary } from '../trials/study-summary.ts';
import { curveRows } from './render-curves.ts';
import { differenceSentences } from './render-differences.ts';
import { endLines } from './render-ends.ts';
import { renderFramed } from './render-frame.ts';
import { headlineSentences } from './render-headline.ts';
import { paragraph } from './render-lines.ts';
import { sourceLines } from './render-sources.ts';
import { strategyTable } from './render-strategies.ts';
import type { Style, TerminalLook } from './render-style.ts';

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
  return renderFramed(
    {
      provenance: summary.provenance,
      about: [],
      headline: headlineSentences(summary),
      body: (style) =>
        [
          ...strategyTable(summary, look, style),
          '',
          ...section('Share of outages still running', curveRows(summary, look, style), style),
          ...section('Why they ended', endLines(summary, look, style), style),
          ...section('Energy back', sourceLines(summary, look, style), style),
          ...section('The same outages, compared', comparedLines(summary, look, style), style),
          ...cautions.flatMap((caution) => [...paragraph(caution, look.width).map(style.strong), '']),
        ].slice(0, -1),
      caution: CAUTION,
    },
    look,
  );
}

function comparedLines(summary: StudySummary, look: TerminalLook, style: Style): string[] {
  const bullets = differenceSentences(summary).flatMap((text) => paragraph(text, look.width, '- '));
  if (bullets.length === 0) return [];
  const note = 'In brackets: 95 % intervals. Means count each run up to the horizon.';
  return [...bullets, ...paragraph(note, look.width, '  ').map(style.quiet)];
}

const CAUTION =
  'These are forecasts from a model of your description, not promises. If somebody’s health hangs on power, keep a second way ready and talk to the clinic, the supplier and the utility beforehand.';

function section(title: string, lines: readonly string[], { heading }: Style): string[] {
  return lines.length === 0 ? [] : [heading(title), ...lines, ''];
}
