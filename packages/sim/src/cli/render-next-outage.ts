import type { NextOutage, NextOutageFigures } from '../advice/outage-lengths/next-outage.ts';
import type { Bounds } from '../advice/outage-lengths/ridden-out.ts';
import { percent } from '../trials/days-in-words.ts';
import { underTitles } from './by-alternative.ts';
import { counted } from './counted.ts';
import { renderFramed } from './render-frame.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';
import { terminalTable, type Column } from './render-table.ts';

/** The next outage for a terminal: the chance, the table, where lengths come from, how to repeat it. */
export function renderNextOutage(answer: NextOutage, look: TerminalLook): string {
  return renderFramed(
    {
      provenance: answer.provenance,
      about: ['The next outage, weighed by how long outages last.'],
      headline: headline(answer),
      body: (style) => [
        ...table(answer, look, style),
        '',
        ...notes(answer).flatMap((text) => paragraph(text, look.width, '  ').map(style.quiet)),
      ],
      caution:
        'Figures of a whole country or utility are averages: a home at the end of a line waits longer, and outages that come with storms are longer and darker than others. Plan for longer than the mean.',
    },
    look,
  );
}

function headline({ figures, lengths, provenance }: NextOutage): string[] {
  const best = figures.reduce((a, b) => (isBetter(b, a) ? b : a));
  return [
    `Outages: ${lengths.perYear.toFixed(1)} a year, ${hours(lengths.meanHours)} long on average, ${hours(lengths.hoursPerYear)} a year in all.`,
    `“${best.strategyTitle}” with “${best.alternativeTitle}” rides out the next one with a chance of ${shareRange(best.riddenOut)}; one that outlasts it comes ${howOften(best.notRiddenOutPerYear, provenance.draws)}.`,
  ];
}

/** By what is certain, then, where the horizon hides the rest, by what may be; equal is what reads equal. */
function isBetter(a: NextOutageFigures, b: NextOutageFigures): boolean {
  const worth = (f: NextOutageFigures): number[] => [
    Number(fine(f.riddenOut.least)),
    Number(fine(f.riddenOut.most)),
    -f.hoursWithoutPerYear.most,
    -f.hoursWithoutPerYear.least,
  ];
  const gains = worth(a).map((value, i) => value - worth(b)[i]!);
  return (gains.find((gain) => gain !== 0) ?? 0) > 0;
}

/** Fewer a year than this are told as rare, if so many draws can tell. */
const RARE_PER_YEAR = 0.01;

function howOften({ least, most, high }: Bounds, draws: number): string {
  if (most <= RARE_PER_YEAR) {
    if (high <= RARE_PER_YEAR) return 'less than once in a hundred years';
    const times = Math.ceil(high);
    const limit =
      high <= 0.5
        ? `less than once in ${atLeast(1 / high)}\u00a0years`
        : `less than ${times === 1 ? 'once' : `${times} times`} a year`;
    return `${limit}, as far as ${counted(draws, 'simulated outage')} can tell`;
  }
  const once = `about ${onceIn(1 / most)}`;
  if (most - least <= 0.05 * most) return once;
  if (least <= RARE_PER_YEAR) return `${once} at most`;
  const [from, to] = [spoken(1 / most), spoken(1 / least)];
  return from === to ? once : `about once in ${from} to ${to}\u00a0years`;
}

function onceIn(years: number): string {
  const told = spoken(years);
  if (told === '1') return 'once a year';
  return years < 1 ? `${spoken(1 / years)} times a year` : `once in ${told}\u00a0years`;
}

/** Years as they are said: to a tenth below ten, and 2 rather than 2.0. */
const spoken = (years: number): string => String(Number(inYears(years)));

/** The same, never more than it is: for a limit. */
function atLeast(years: number): string {
  const parts = years < 10 ? 10 : 1;
  return String(Math.floor(years * parts) / parts);
}

const COLUMNS: readonly Column<NextOutageFigures>[] = [
  { head: ['ridden', 'out'], width: 13, cell: (f) => shareRange(f.riddenOut) },
  { head: ['95\u00a0%', 'interval'], width: 15, cell: (f) => interval(f.riddenOut) },
  { head: ['hours without', 'a year'], width: 15, cell: (f) => hourRange(f.hoursWithoutPerYear) },
  { head: ['outlasted', 'once in, y'], width: 12, cell: (f) => years(f.notRiddenOutPerYear) },
];
const LEAST_NAME = 22;
const INDENT = 2;

function table({ figures }: NextOutage, look: TerminalLook, style: Style): string[] {
  const { heads, row } = terminalTable(COLUMNS, LEAST_NAME, INDENT, look, style);
  return [
    ...heads,
    ...underTitles(figures, look, style.heading, (group) => group.flatMap((f) => row(f, f.strategyTitle))),
  ];
}

/** Tenths of a per cent: chances here lie close to 1. */
const fine = (share: number): string => (100 * share).toFixed(1);

function shareRange({ least, most }: Bounds): string {
  const [from, to] = [fine(least), fine(most)];
  return from === to ? `${from}\u00a0%` : `${from}–${to}\u00a0%`;
}

const interval = ({ low, high }: Bounds): string => `${fine(low)} to ${fine(high)}`;

function hourRange({ least, most }: Bounds): string {
  const [from, to] = [least.toFixed(2), most.toFixed(2)];
  return from === to ? from : `${from}–${to}`;
}

/** From the most often to the least often; `+` where that is not known, or rarer than is told. */
function years({ least, most, high }: Bounds): string {
  if (most <= RARE_PER_YEAR) return `${inYears(1 / Math.max(high, RARE_PER_YEAR))} +`;
  const [from, to] = [inYears(1 / most), inYears(1 / least)];
  if (from === to) return from;
  return least <= RARE_PER_YEAR ? `${from} +` : `${from}–${to}`;
}

const inYears = (n: number): string => n.toFixed(n < 10 ? 1 : 0);

const hours = (n: number): string => `${n.toFixed(1)}\u00a0hours`;

function notes({ lengths, horizonDays, provenance }: NextOutage): string[] {
  const over = lengths.overBy
    .map(
      ({ days, share }) => `${fine(share)}\u00a0% by ${days < 1 ? `${24 * days}\u00a0h` : `${days}\u00a0d`}`,
    )
    .join(', ');
  return [
    `Lengths: ${lengths.source}. Over: ${over}.`,
    `“Ridden out”: over before tier 1 goes without, ${counted(provenance.draws, 'simulated outage')}. “Hours without”: from then to the end of the outage; a home without backup has ${hours(lengths.hoursPerYear)}. “Outlasted”: an outage that is longer than the house holds comes once in so many years.`,
    lengths.beyondHorizonFraction > 1e-6
      ? `${percent(lengths.beyondHorizonFraction)} of outages last longer than the ${horizonDays} days looked at; where runs were still going then, two figures say between what the truth lies.`
      : `Hardly any outage lasts longer than the ${horizonDays} days looked at: the horizon hides nothing here.`,
  ];
}
