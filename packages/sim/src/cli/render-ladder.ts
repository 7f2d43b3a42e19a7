import { toldOf, type Told } from '../advice/told.ts';
import { clearRungs } from '../advice/ladder/clear-rungs.ts';
import type { LadderAnswer, LadderRung, LadderStand } from '../advice/ladder/ladder-answer.ts';
import { intervalCell, intervalText, reachCell, reachText } from '../trials/days-in-words.ts';
import { gainLength, gainWithLimitsCell } from '../trials/gains-in-words.ts';
import { counted } from './counted.ts';
import { renderFramed } from './render-frame.ts';
import { paragraph, toRight } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';
import { terminalTable, type Column } from './render-table.ts';

/** The ladder for a terminal: the first rung in words, the table, what was left, the check, how to repeat it. */
export function renderLadder(answer: LadderAnswer, look: TerminalLook): string {
  const { incentivesNote, choosingNote } = NOTES;
  const notes = [...readingNotes(answer), `${choosingNote} seed ${answer.freshSeed}.`, incentivesNote];
  return renderFramed(
    {
      provenance: answer.provenance,
      about: [`What to buy next: ${shareWords(answer.confidence)} reach how many days, for what money.`],
      headline: headline(answer),
      body: (style) => [
        ...table(answer, look, style),
        '',
        ...paragraphs(leftWords(answer), look),
        ...paragraphs(allWords(answer), look),
        '',
        ...paragraphs(notes, look, '  ').map(style.quiet),
      ],
      caution:
        'Prices are the ones you typed. What may be joined to your panel, and by whom, is for the local code and a licensed electrician to say; one unit that feeds both legs must never meet circuits that share a neutral.',
    },
    look,
  );
}

const NOTES = {
  choosingNote:
    'The figures are from other outages than those on which the order was chosen, so that luck in choosing does not flatter them. To `days` they are those of',
  incentivesNote: 'Prices are after the incentive you gave, if any.',
};

function paragraphs(texts: readonly string[], { width }: TerminalLook, indent = ''): string[] {
  return texts.flatMap((text) => paragraph(text, width, indent));
}

function shareWords(share: number): string {
  if (share === 0.9) return 'nine outages in ten';
  if (share === 0.5) return 'half of the outages';
  return `${Math.round(share * 1000) / 10}\u00a0% of outages`;
}

function money(amount: number, { currency }: LadderAnswer): string {
  return amount === 0 ? 'free' : `${currency}\u00a0${groups(Math.round(amount))}`;
}

/** `12 500`: thousands apart, whatever the country. */
function groups(whole: number): string {
  return String(whole).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}

function headline(answer: LadderAnswer): string[] {
  const { rungs, start, horizonDays } = answer;
  const clear = clearRungs(rungs);
  const up = clear.length;
  const end = clear.at(-1);
  const from = `${start.title}, “${start.strategyTitle}”: ${shareWords(answer.confidence)} reach ${reachText(start.days.value, horizonDays)}.`;
  if (end === undefined) return [from, ...beyond(rungs), ENDED[answer.ended]];
  const paid = end.paid === 0 ? 'no money' : money(end.paid, answer);
  return [
    from,
    `${counted(up, 'rung')} up, for ${paid} in all, they reach ${reachText(end.days.value, horizonDays)} (“${end.strategyTitle}”, ${intervalText(end.days, horizonDays)}).`,
    ...beyond(rungs.slice(up)),
    ENDED[answer.ended],
  ];
}

const AGAINST_END: Readonly<Record<Told, string>> = {
  clear: '',
  'clear, less on average': ', though less on average',
  'on average': ', more on average only',
  'not told from zero': ', not told from zero',
  'a loss': ', so it is no better there',
};

/** Rungs above the last whose gain is clear. */
function beyond(rungs: readonly LadderRung[]): string[] {
  if (rungs.length === 0) return [];
  const few = rungs.length === 1 ? 'One rung more' : `${rungs.length} rungs more`;
  return [`${few} may bring more, but not clearly so in the days that so many outages reach.`];
}

const ENDED: Readonly<Record<LadderAnswer['ended'], string>> = {
  'all taken': 'Then every step is taken.',
  'no gain': 'No further step was found to gain anything.',
  budget: 'The budget ends there.',
  horizon:
    'There every outage outlasts the horizon: a longer outage.horizonDays would show what more brings.',
};

/** A rung, or the start, which has no price and no gain. */
type Row = LadderStand & Partial<LadderRung>;

const LEAST_NAME = 17;
/** ` 1 ~ `: the rung's number and its mark. */
const INDENT = 5;
const MARKS: Readonly<Record<Told, string>> = {
  clear: ' ',
  'clear, less on average': '*',
  'on average': '~',
  'not told from zero': '?',
  'a loss': '!',
};

/** Wide enough for every sum, in any currency. */
function moneyWidth(answer: LadderAnswer): number {
  const sums = answer.rungs.flatMap(({ price, paid, pricePerDay }) => [price, paid, pricePerDay ?? 0]);
  return Math.max(10, ...sums.map((sum) => 2 + Array.from(money(sum, answer)).length));
}

function columnsOf(answer: LadderAnswer): Column<Row>[] {
  const { horizonDays } = answer;
  const sumWidth = moneyWidth(answer);
  return [
    {
      head: ['', 'price'],
      width: sumWidth,
      cell: (r) => (r.price === undefined ? '' : money(r.price, answer)),
    },
    { head: ['time', 'reached'], width: 9, cell: (r) => reachCell(r.days.value, horizonDays) },
    {
      head: ['gain', '(95\u00a0%)'],
      width: 25,
      cell: (r) => (r.gainDays ? gainWithLimitsCell(r.gainDays) : ''),
    },
    {
      head: ['price of', 'a day'],
      width: sumWidth,
      cell: (r) => (typeof r.pricePerDay === 'number' ? money(r.pricePerDay, answer) : ''),
    },
    { head: ['paid', 'in all'], width: sumWidth, cell: (r) => (r.paid ? money(r.paid, answer) : '') },
    { head: ['reached', '(95\u00a0%)'], width: 17, cell: (r) => intervalCell(r.days, horizonDays) },
  ];
}

function table(answer: LadderAnswer, look: TerminalLook, style: Style): string[] {
  const { heads, row } = terminalTable(columnsOf(answer), LEAST_NAME, INDENT, look, style);
  const rungs = answer.rungs.flatMap((rung, i) => {
    const before = i === 0 ? answer.start : answer.rungs[i - 1]!;
    const line = row(rung, rung.title, `${toRight(String(i + 1), 2)} ${MARKS[rung.told]} `);
    const change =
      before.strategyId === rung.strategyId
        ? []
        : paragraph(`then lives by “${rung.strategyTitle}”`, look.width, ' '.repeat(INDENT)).map(style.quiet);
    return [...line, ...change];
  });
  return [...heads, ...row(answer.start, answer.start.title), ...rungs];
}

function readingNotes({ rungs, confidence, horizonDays, provenance }: LadderAnswer): string[] {
  const told = new Set(rungs.map((rung) => rung.told));
  const hidden = rungs.some(({ days, gainDays }) =>
    [days.value, gainDays.value, gainDays.high].includes(null),
  );
  return [
    `Time that ${shareWords(confidence)} reach (d: days, h: hours), from ${provenance.draws} simulated outages. A gain is against the rung above, on the same outages.`,
    ...rungs.flatMap((rung, i) =>
      rung.told === 'clear, less on average'
        ? [
            `*: rung ${i + 1} reaches more days in ${shareWords(confidence)}, but fewer in the mean outage: ${gainWithLimitsCell(rung.gainMeanDays)}.`,
          ]
        : [],
    ),
    ...(told.has('on average')
      ? ['~: longer on average, but no clear gain in the days that so many outages reach.']
      : []),
    ...(told.has('not told from zero') ? ['?: the gain cannot be told from none at all.'] : []),
    ...(hidden ? [`Hidden: past the horizon of ${horizonDays} days, at which the study stops looking.`] : []),
  ];
}

function leftWords(answer: LadderAnswer): string[] {
  const back = answer.takenBack.map(
    ({ title, gainDays, strategyTitle }) =>
      `${title} (then by “${strategyTitle}”): ${gainWithLimitsCell(gainDays)}`,
  );
  const lost =
    back.length === 0 ? [] : [`Chosen, then taken back, for on other outages it loses: ${back.join('; ')}.`];
  if (answer.left.length === 0) return lost;
  const named = answer.left.map(({ title, price, why }) => `${title} (${money(price, answer)}): ${why}`);
  return [...lost, `Not on the ladder: ${named.join('; ')}.`];
}

function allWords({ all, horizonDays, ...answer }: LadderAnswer): string[] {
  if (all === null)
    return [
      'There are too many combinations of these steps to look at each one: the order is step by step the best next one, not proven best as a whole.',
    ];
  const checked = `Check: all ${all.combinations} combinations were looked at.`;
  if (all.mostBehindDays < 0.05)
    return [`${checked} For no sum of money on the way is another one ahead of the ladder.`];
  const behind = `${checked} On the way the best one for the same money is up to ${gainLength(all.mostBehindDays)} ahead of a rung, on the outages that chose it.`;
  const whole = answer.budget === null ? 'the money of the whole ladder' : 'the whole budget';
  if (all.other === null) return [`${behind} For ${whole} none is.`];
  const { other } = all;
  const { stepTitles, days, gainDays } = other;
  return [
    behind,
    `For ${whole}, ${stepTitles.join(', ')} together reach ${reachText(days.value, horizonDays)} on the fresh outages: ${gainWithLimitsCell(gainDays)} against the ladder’s end${AGAINST_END[toldOf({ days: other.gainDays, meanDays: other.gainMeanDays })]}. That costs ${money(other.paid, { all, horizonDays, ...answer })}.`,
  ];
}
