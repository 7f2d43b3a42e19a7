import { isGain } from '../advice/told.ts';
import type { LegSchedule, LegsAnswer, ScheduledCircuit } from '../advice/legs/legs-answer.ts';
import { atMostThisLong, intervalText, percent, reachText } from '../trials/days-in-words.ts';
import { gainLength, gainLimits, signedGainLength } from '../trials/gains-in-words.ts';
import type { Estimate } from '../trials/study-summary.ts';
import { counted } from './counted.ts';
import { renderFramed } from './render-frame.ts';
import { paragraph, toLeft, toRight, wrapLines } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

/** Which circuit on which leg, for a terminal: the gain, the moves, the schedule, the search and its bound. */
export function renderLegs(answer: LegsAnswer, look: TerminalLook): string {
  const { alternativeTitle, strategyTitle, freshSeed } = answer;
  return renderFramed(
    {
      provenance: answer.provenance,
      about: [`Which circuit on which leg: “${alternativeTitle}”, “${strategyTitle}”.`],
      headline: headline(answer),
      body: (style) => [
        ...moveLines(answer, look),
        style.heading(isGain(answer.told) ? 'The panel like that' : 'The panel as it is'),
        ...answer.legs.flatMap((leg) => legLines(leg, look, style)),
        ...acrossLines(answer, look, style),
        '',
        style.heading('How far any other could be ahead'),
        ...boundWords(answer).flatMap((text) => paragraph(text, look.width)),
        '',
        ...[
          `The gain is from other outages than those on which the assignment was chosen: those of seed ${freshSeed}, as \`days\` knows them.`,
          '*: moved. Watts are nameplates; “by itself” is what runs without anybody choosing when.',
        ]
          .flatMap((text) => paragraph(text, look.width, '  '))
          .map(style.quiet),
      ],
      caution:
        'Moving a circuit is work inside a live panel: leave it to a licensed electrician and the local code. Circuits that share a neutral must stay on two legs; if it is not written in the panel which ones do, have that found out first.',
    },
    look,
  );
}

function headline({ present, best, moves, ...answer }: LegsAnswer): string[] {
  const reach = (days: Estimate) => reachText(days.value, answer.horizonDays);
  const now = `As the panel is, nine outages in ten reach ${reach(present.days)} (${intervalText(present.days, answer.horizonDays)}).`;
  if (moves.length === 0) return [now, 'No other assignment was found to last longer.'];
  const what = `${counted(moves.length, 'circuit')} moved`;
  const gain = `${gainWords(answer.gainDays)}; on average ${signedGainLength(answer.gainMeanDays.value!)}${limits(answer.gainMeanDays)}`;
  if (!isGain(answer.told))
    return [
      now,
      `The best found, ${what}, does not hold up on fresh outages: ${gain}. Nothing here is worth opening the panel for.`,
    ];
  return [
    now,
    `With ${what} they reach ${reach(best.days)}: ${gain}.`,
    `Trips per outage: ${trips(present.tripsPerOutage)} now, ${trips(best.tripsPerOutage)} then${tripWords(answer.gainTrips)}.`,
  ];
}

function gainWords(gain: Estimate): string {
  if (gain.value === null) return `the horizon hides how much more${limits(gain)}`;
  return `${gainLength(gain.value)} ${gain.value < 0 ? 'less' : 'more'}${limits(gain)}`;
}

function limits(gain: Estimate): string {
  const told = gainLimits(gain);
  return told === '' ? '' : ` (${told})`;
}

const trips = (count: number) => count.toFixed(2);

function tripWords({ low, high }: Estimate): string {
  if (low === null || high === null || (low <= 0 && high >= 0)) return ' (no clear difference)';
  return high < 0 ? ' (fewer)' : ' (more)';
}

function moveLines({ moves, told }: LegsAnswer, look: TerminalLook): string[] {
  if (moves.length === 0) return [];
  const lines = moves.flatMap(({ title, from, to }) =>
    paragraph(`${title}: from ${from} to ${to}`, look.width, '- '),
  );
  const head = isGain(told) ? 'Circuits that move:' : 'It would move:';
  return [head, ...lines, ''];
}

const watts = (w: number) => `${Math.round(w)}\u00a0W`;

function legLines(leg: LegSchedule, look: TerminalLook, style: Style): string[] {
  const sums = `${watts(leg.nameplateW)} of nameplates, ${watts(leg.unattendedW)} by itself; carries ${watts(leg.continuousW)} for hours`;
  return [
    ...paragraph(`${leg.leg} (unit ${leg.unitId}): ${sums}`, look.width).map(style.strong),
    ...leg.circuits.flatMap((circuit) => circuitLines(circuit, look)),
  ];
}

function acrossLines({ across }: LegsAnswer, look: TerminalLook, style: Style): string[] {
  if (across.length === 0) return [];
  return [style.strong('L1 and L2 (240 V)'), ...across.flatMap((circuit) => circuitLines(circuit, look))];
}

function circuitLines(circuit: ScheduledCircuit, look: TerminalLook): string[] {
  const { title, tier, breakerA, nameplateW, moved, kept } = circuit;
  const tail =
    toRight(`tier ${tier}`, 8) +
    toRight(breakerA === null ? '' : `${breakerA}\u00a0A`, 7) +
    toRight(watts(nameplateW), 9);
  const name = kept === null || kept === '240 V' ? title : `${title} (${kept})`;
  const nameWidth = look.width - tail.length - 2;
  const [first = '', ...more] = wrapLines(name, nameWidth - 1);
  return [`${moved ? '* ' : '  '}${toLeft(first, nameWidth)}${tail}`, ...more.map((part) => `  ${part}`)];
}

function boundWords({ search, bound, horizonDays, provenance }: LegsAnswer): string[] {
  const reach = (days: number | null) => reachText(days, horizonDays);
  const { movableCircuits, assignments, simulated, how } = search;
  const said = `${movableCircuits} circuits can be on either leg: ${assignments < 1e6 ? assignments : assignments.toExponential(1)} assignments, ${simulated} of them simulated on ${provenance.choosingDraws} outages. There the panel as it is reaches ${reach(search.presentDays)} and the best found ${reach(search.bestDays)}.`;
  if (how === 'every one simulated')
    return [said, 'Every assignment within the ratings was simulated: on these outages none lasts longer.'];
  if (bound === null)
    return [
      said,
      'No bound: the strategy can switch off everything, or power comes from elsewhere too, so nothing is proven of the others.',
    ];
  return [said, boundSentence(bound), checkSentence(bound)];
}

function boundSentence(bound: NonNullable<LegsAnswer['bound']>): string {
  const what =
    bound.kind === 'placings'
      ? 'Even with every circuit gone that the strategy could ever drop, and no trips,'
      : 'Even with both banks and all panels as one, every circuit gone that the strategy could ever drop, and no trips,';
  if (bound.days === null)
    return `${what} some assignment might reach the horizon on nine in ten of these outages: nothing is proven below it.${ruledOut(bound)}`;
  return `${what} nine in ten of these outages reach no more than ${atMostThisLong(bound.days)} with any assignment: that is as far as another could be ahead.${ruledOut(bound)}`;
}

function ruledOut({ kind, ruledOutFraction }: NonNullable<LegsAnswer['bound']>): string {
  if (kind === 'pooled' || ruledOutFraction === 0) return '';
  return ` ${percent(ruledOutFraction)} of all assignments cannot beat the best found.`;
}

/** The bound assumes that more load never makes a unit last longer; the runs at hand are held against it. */
function checkSentence({ drawsBeyond, drawsChecked }: NonNullable<LegsAnswer['bound']>): string {
  return drawsBeyond === 0
    ? `None of ${drawsChecked} simulated runs outlasted its bound.`
    : `Take that bound with care: ${drawsBeyond} of ${drawsChecked} simulated runs outlasted theirs, by stopping and coming back within their grace.`;
}
