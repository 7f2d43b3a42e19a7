/** Who does it, and what to do when a unit stops: the card's other sentences. */
import { listed, type HouseholdSpec, type Scenario } from '@rideout/sim';
import { cutOffs, type CutOff } from '../charts/cold-cut-off.ts';
import { counted } from '../charts/counted.ts';
import { clockTimesIn, degreesText, type Look } from '../charts/look.ts';
import { byLeg, percentText, type ByLeg, type CardPlan } from './card-steps.ts';

type Strategy = HouseholdSpec['strategies'][number];
type Unit = HouseholdSpec['units'][number];

export function whoWords(
  { person, units }: HouseholdSpec,
  strategy: Strategy,
  clock: Look['clock'] = 24,
): string {
  if (strategy.rules.length === 0)
    return 'Nothing is switched off: leave everything as it is and watch the reading.';
  const by = byReadingsWords(units, strategy);
  if (strategy.carriedOutBy === 'switch')
    return `An automatic switch does this, by ${by}. Look now and then whether it has; if it fails, do it by hand in this order.`;
  const [from, to] = clockTimesIn(person.awake, clock).split('-');
  return `You do this, awake ${from} to ${to}: every ${minutesText(person.looksEveryMinutes).replace(/^an? /, '')} read ${by} and go down the list. Things come back from the bottom of the list up. Set them for the night at the last look.`;
}

/** Which reading a line goes by: some lines may each go by their own leg's. */
function byReadingsWords(units: readonly Unit[], { rules }: Strategy): string {
  const charge = rules.filter((rule) => rule.by === 'charge');
  const own = units.length > 1 ? charge.filter(({ reads }) => reads === 'own') : [];
  if (own.length === 0) return readingWords(units);
  const eachLeg = 'each leg by its own unit’s reading (240\u00a0V by the lower)';
  if (own.length === charge.length) return `both batteries’ readings, ${eachLeg},`;
  return `both batteries’ readings (go by the lower of the two; where the line says “own leg”, ${eachLeg})`;
}

/** @param read units whose readings count, of the household's; left out: all of them */
export function readingWords(units: readonly Unit[], read: readonly Unit[] = units): string {
  if (units.length === 1) return 'the battery’s reading';
  if (read.length > 1) return 'the lower of the two batteries’ readings';
  return `the reading of ${listed(read.map(unitName))}`;
}

/** "unit “east” (L1)". */
export function unitName({ id, leg }: Unit): string {
  return `unit “${id}” (${leg})`;
}

/** In the order in which they are done. */
export function afterTripSteps(household: HouseholdSpec, { steps }: Pick<CardPlan, 'steps'>): string[] {
  const { units, person } = household;
  const itself = units.find(({ inverter }) => inverter.resetsItselfAfterMinutes !== undefined)?.inverter;
  const first = itself
    ? [
        `Wait: it starts again by itself after ${minutesText(itself.resetsItselfAfterMinutes!)}, up to ${itself.resetTries} times. If it stays down, go on.`,
      ]
    : [];
  const byReading = steps.some(({ backOn }) => backOn !== '');
  return [
    ...first,
    person.afterTripShedTiers === 0
      ? 'Switch off whatever had just started.'
      : byReading
        ? nextLinesWords(household)
        : leastWords(household, steps),
    'Reset the unit as its manual says.',
    `Wait ${minutesText(person.afterTripHoldMinutes)}, then switch circuits on again one at a time, most essential first.`,
    'If it trips again, leave more off. Smell, heat or smoke: leave it off and call for help.',
  ];
}

/** What is off already hangs on the reading: the list above says which circuits go next. */
function nextLinesWords({ units, person }: HouseholdSpec): string {
  const lines =
    person.afterTripShedTiers === 1
      ? 'the next line of the list that is still on'
      : `the next ${person.afterTripShedTiers} lines of the list that are still on`;
  const where = units.length > 1 ? ', on the leg of the unit that stopped and on 240\u00a0V' : '';
  return `Switch off ${lines}${where}. If the list is done: what you can best do without for now.`;
}

/** Without a list by reading: the tiers that stay off after a first reset, by their circuits, leg by leg. */
function leastWords({ circuits, units, person }: HouseholdSpec, steps: CardPlan['steps']): string {
  const tiers = [...new Set(circuits.map((c) => c.tier))].sort((a, b) => b - a);
  const least = tiers.filter((tier) => tier > 1).slice(0, person.afterTripShedTiers);
  const off = byLeg(circuits.filter((c) => least.includes(c.tier)));
  const stillOn = (leg: keyof ByLeg) =>
    off[leg].filter((name) => !steps.some((step) => step.off[leg].includes(name)));
  const legs = (
    [
      ['L1', 'L1'],
      ['L2', 'L2'],
      ['both', '240\u00a0V'],
    ] as const
  ).flatMap(([leg, name]) => (stillOn(leg).length > 0 ? [{ name, circuits: listed(stillOn(leg)) }] : []));
  if (legs.length === 0) return 'Switch off what you can best do without for now.';
  if (units.length === 1)
    return `Switch off the least essential circuits: ${listed(legs.map((l) => l.circuits))}.`;
  return `On the leg of the unit that stopped, switch off the least essential circuits. ${legs.map((l) => `${l.name}: ${l.circuits}`).join('. ')}.`;
}

/** A unit that has run empty needs energy, not a reset. */
export function emptyWords({ units, pair }: HouseholdSpec): string {
  const together =
    units.length > 1 && pair.stopsTogether
      ? ' The two stop together: one battery down at its level stops both, and both come back with it.'
      : '';
  return `Do not reset ${units.length > 1 ? 'that unit' : 'it'}: once charged so far it comes back by itself. Until then leave off what you can do without, so that it stays on longer.${together}`;
}

/** At which reading the units stop by themselves, warm and as cold as it gets there. */
export function cutOffWords(
  { units }: HouseholdSpec,
  coldestC: number,
  look: Pick<Look, 'temperature'>,
): string {
  const words = units.map(({ battery }) => unitCutOffWords(cutOffs(battery, coldestC), look));
  const all = new Set(words);
  if (all.size === 1) return `${units.length > 1 ? 'Each unit' : 'The unit'} ${words[0]!}.`;
  return units.map((unit, u) => `${capitalised(unitName(unit))} ${words[u]!}.`).join(' ');
}

function unitCutOffWords([warm, ...colder]: readonly CutOff[], look: Pick<Look, 'temperature'>): string {
  const levels = ({ stopsFraction, returnsFraction }: CutOff) =>
    [stopsFraction, returnsFraction].map((fraction) => percentText(Math.round(fraction * 100) / 100));
  const [stops, returns] = levels(warm!);
  const usual = `stops itself at ${stops} and comes back at ${returns}`;
  if (colder.length === 0) return usual;
  const cold = colder.map((cutOff) => {
    const [at, back] = levels(cutOff);
    return `with modules at ${degreesText(cutOff.moduleC, look)} at ${at}, back at ${back}`;
  });
  return `${usual} while its modules are warm (${degreesText(warm!.moduleC, look)}); in the cold it stops sooner: ${cold.join('; ')}`;
}

/** The coldest that the months of the outage get: of a normal month its mean, of a weather year its coldest hour. */
export function coldestOutdoorsC({ outage, weather }: Scenario): number {
  const { source } = weather;
  if (source.kind === 'year') return source.year.dryBulbC.reduce((least, c) => Math.min(least, c), Infinity);
  const months = outage.startLocal ? [Number(outage.startLocal.slice(5, 7))] : (outage.months ?? []);
  return Math.min(...months.map((month) => source.monthly.dryBulbMeanC[month - 1]!));
}

function capitalised(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

export function minutesText(minutes: number): string {
  if (minutes === 60) return 'an hour';
  if (minutes % 60 === 0) return `${minutes / 60} hours`;
  return counted(minutes, 'minute');
}
