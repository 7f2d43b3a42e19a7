import type { StudySummary, SurvivalCurve } from '../trials/study-summary.ts';
import { underTitles } from './by-alternative.ts';
import { paragraph, toLeft, wrapLines } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

const BLOCKS = [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/** Every survival curve as one row: the height (or, in ASCII, the digit) is the share still running at that time. */
export function curveRows(summary: StudySummary, look: TerminalLook, style: Style): string[] {
  const nameWidth = Math.min(30, Math.floor(look.width * 0.36));
  const cells = look.width - nameWidth - 4;
  const sign = look.ascii ? digitFor : blockFor;
  const how = look.ascii
    ? 'Digit: tenths still running (9: nine in ten or more, #: all of them, -: fewer than one in ten).'
    : 'Full height: all still running; half height: half of them.';
  return [
    ...underTitles(summary.strategies, look, style.heading, (group) =>
      group.flatMap((strategy) => {
        const [first = '', ...more] = wrapLines(strategy.strategyTitle, nameWidth - 1);
        const drawn = Array.from({ length: cells }, (_, i) =>
          sign(survivalAt(strategy.curve, ((i + 0.5) / cells) * summary.horizonDays)),
        );
        return [`  ${toLeft(first, nameWidth)}|${drawn.join('')}|`, ...more.map((part) => `  ${part}`)];
      }),
    ),
    '  ' + ' '.repeat(nameWidth) + dayAxis(summary.horizonDays, cells),
    ...paragraph(how, look.width, '  ').map(style.quiet),
  ];
}

/** Share still running just after `day`. */
export function survivalAt(curve: SurvivalCurve, day: number): number {
  let survival = 1;
  for (let i = 0; i < curve.day.length && curve.day[i]! <= day; i += 1) survival = curve.survival[i]!;
  return survival;
}

/** Nearest eighth, but never blank while some run and never full once some have ended. */
function blockFor(survival: number): string {
  if (survival <= 0) return ' ';
  if (survival >= 1) return '█';
  return BLOCKS[Math.min(7, Math.max(1, Math.round(survival * 8)))]!;
}

function digitFor(survival: number): string {
  if (survival <= 0) return ' ';
  if (survival >= 1) return '#';
  return survival < 0.1 - 1e-9 ? '-' : String(Math.floor(survival * 10 + 1e-9));
}

/** `0 … 14 days` under the curves, with the middle marked. */
function dayAxis(horizonDays: number, cells: number): string {
  const end = `${horizonDays}\u00a0days`;
  const middle = String(Math.round(horizonDays * 5) / 10);
  const half = Math.floor(cells / 2) + 1;
  const left = toLeft(toLeft('0', half) + middle, cells + 2 - end.length);
  return left + end;
}
