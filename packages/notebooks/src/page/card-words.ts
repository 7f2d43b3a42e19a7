/** Who does it, and what to do when a unit stops: the card's other sentences. */
import type { HouseholdSpec } from '@rideout/sim';
import { clockTimesIn, type Look } from '../charts/look.ts';
import { listed, percentText } from './card-steps.ts';

type Strategy = HouseholdSpec['strategies'][number];

export function whoWords(
  { person, units }: HouseholdSpec,
  strategy: Strategy,
  clock: Look['clock'] = 24,
): string {
  if (strategy.rules.length === 0)
    return 'Nothing is switched off: leave everything as it is and watch the reading.';
  const reading = units.length > 1 ? 'the lower of the two batteries’ readings' : 'the battery’s reading';
  if (strategy.carriedOutBy === 'switch')
    return `An automatic switch does this, by ${reading}. Look now and then whether it has; if it fails, do it by hand in this order.`;
  const [from, to] = clockTimesIn(person.awake, clock).split('-');
  return `You do this, awake ${from} to ${to}: every ${minutesText(person.looksEveryMinutes).replace(/^an? /, '')} read ${reading} and go down the list. Things come back from the bottom of the list up. Set them for the night at the last look.`;
}

/** In the order in which they are done. */
export function afterTripSteps(household: HouseholdSpec): string[] {
  const { units, person } = household;
  const itself = units.find(({ inverter }) => inverter.resetsItselfAfterMinutes !== undefined)?.inverter;
  const first = itself
    ? [
        `Wait: it starts again by itself after ${minutesText(itself.resetsItselfAfterMinutes!)}, up to ${itself.resetTries} times. If it stays down, go on.`,
      ]
    : [];
  const off =
    person.afterTripShedTiers > 0
      ? `the least essential circuits that are on: ${leastWords(household)}`
      : 'whatever had just started';
  return [
    ...first,
    `Switch off ${off}.`,
    'Reset the unit as its manual says.',
    `Wait ${minutesText(person.afterTripHoldMinutes)}, then switch circuits on again one at a time, most essential first.`,
    'If it trips again, leave more off. Smell, heat or smoke: leave it off and call for help.',
  ];
}

/** The tiers that stay off after a first reset, by their circuits. */
function leastWords({ circuits, person }: HouseholdSpec): string {
  const tiers = [...new Set(circuits.map((c) => c.tier))].sort((a, b) => b - a);
  const least = tiers.filter((tier) => tier > 1).slice(0, person.afterTripShedTiers);
  const names = circuits.filter((c) => least.includes(c.tier)).map((c) => c.title ?? c.id);
  return names.length > 0 ? listed(names) : 'all but one';
}

/** At which reading the units stop by themselves. */
export function cutOffWords({ units }: HouseholdSpec): string {
  const words = units.map(
    ({ battery }) =>
      `stops itself at ${percentText(battery.cutOffFraction)} and comes back at ${percentText(battery.restartFraction)}`,
  );
  const all = new Set(words);
  if (all.size === 1) return `${units.length > 1 ? 'Each unit' : 'The unit'} ${words[0]!}.`;
  return units.map(({ id, leg }, u) => `Unit “${id}” (${leg}) ${words[u]!}.`).join(' ');
}

function minutesText(minutes: number): string {
  if (minutes === 60) return 'an hour';
  if (minutes % 60 === 0) return `${minutes / 60} hours`;
  return `${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`;
}
