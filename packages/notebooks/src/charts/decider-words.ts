/** What sets how long the second household lasts, in a heading's words. */
import { verdictOf, type Comparison } from './alternatives-comparison.ts';
import { deciderOf, type Decider } from './alternatives-energy.ts';

const GAINS: Readonly<Record<Decider, string>> = {
  overload: 'It gains, until overload ends most of these outages',
  cold: 'It gains, until the cold ends most of these outages',
  'enough sun': 'The sun already carries the house',
  inverters: 'It gains, though the inverters take more than half of the sun that is caught',
  'no sun': 'It gains its first charge and no more: no sun refills it',
  'no more sun': 'It gains by carrying the night: there is no more sun for it to catch',
  'one leg': 'It gains, and then one leg decides: the battery there is the one that runs empty',
  storage: 'It gains twice: a larger first charge, and more sun carried into the night',
};

const BUYS_NOTHING: Readonly<Record<Decider, string>> = {
  overload: 'It buys nothing: overload ends these outages, not an empty battery',
  cold: 'It buys nothing: the cold ends these outages, not an empty battery',
  'enough sun': 'It buys nothing that shows: the sun already carries the house',
  inverters: 'It buys nothing: the inverters’ own appetite takes more than half of the sun that is caught',
  'no sun': 'It buys next to nothing: no sun refills it',
  'no more sun': 'It buys nothing: there is no more sun for a second battery to catch',
  'one leg': 'It buys nothing clear: one leg decides, as the battery there is the one that runs empty',
  storage: 'It buys nothing that these outages could tell from chance; more of them might',
};

export function deciderWords(compared: Comparison): string {
  return (verdictOf(compared) === 'longer' ? GAINS : BUYS_NOTHING)[deciderOf(compared)];
}
