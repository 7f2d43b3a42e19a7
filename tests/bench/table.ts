/** Figures as plain aligned text. */
import type { Figure } from './figure.ts';
import type { Spread } from './timing.ts';

const HEADINGS = ['', 'best', 'median', 'unit', 'of yardstick, best', 'median', 'samples'];
const WORDS = new Set([0, 3]);

/** One block per measurement, its notes below it. */
export function renderFigures(figures: readonly Figure[]): string {
  const rows = figures.map(rowOf);
  const widths = HEADINGS.map((heading, c) => Math.max(heading.length, ...rows.map((row) => row[c]!.length)));
  const blocks = [...new Set(figures.map((f) => f.measurement))].map((measurement) => {
    const lines = rows
      .filter((_, i) => figures[i]!.measurement === measurement)
      .map((row) => align(row, widths));
    return [
      align([measurement, ...HEADINGS.slice(1)], widths),
      ...lines,
      ...notesOf(figures, measurement),
    ].join('\n');
  });
  return blocks.join('\n\n');
}

function rowOf({ name, best, median, unit, ofYardstick, samples }: Figure): string[] {
  return [`  ${name}`, digits(best), digits(median), unit, ...ratios(ofYardstick), String(samples)];
}

function ratios(of: Spread | null): [string, string] {
  return of === null ? ['–', '–'] : [of.best.toFixed(3), of.median.toFixed(3)];
}

/** Three significant digits, never in powers of ten. */
export function digits(value: number): string {
  const whole = Math.floor(Math.log10(Math.max(Math.abs(value), 1e-3))) + 1;
  return value.toFixed(Math.max(0, Math.min(3, 3 - whole)));
}

function align(row: readonly string[], widths: readonly number[]): string {
  const cells = row.map((cell, c) => (WORDS.has(c) ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!)));
  return cells.join('  ').trimEnd();
}

function notesOf(figures: readonly Figure[], measurement: string): string[] {
  const noted = figures.filter((f) => f.measurement === measurement && f.note !== undefined);
  const notes = new Set(noted.map((f) => f.note!));
  return [...notes].map((note) => {
    const names = noted.filter((f) => f.note === note).map((f) => f.name.trim());
    return `  (${names.length === 1 ? names[0] : `${names[0]} to ${names.at(-1)}`}: ${note})`;
  });
}
