/** What sets how long the second household lasts, as what is said of it: “gains, until …”. */
import { verdictOf, type Comparison } from './alternatives-comparison.ts';
import { deciderOf, type Decider } from './alternatives-energy.ts';

const GAINS: Readonly<Record<Decider, string>> = {
  overload: 'gains, until overload ends most of these outages',
  cold: 'gains, until the cold ends most of these outages',
  'enough sun': 'gains, though the sun already carries the house',
  inverters: 'gains, though the inverters take more than half of the sun that is caught',
  'no sun': 'gains its first charge and no more: no sun refills it',
  'no more sun': 'gains by carrying the night: there is no more sun for it to catch',
  'one leg': 'gains, and then one leg decides: the battery there is the one that runs empty',
  storage: 'gains twice: by a larger first charge, and by more sun carried into the night',
};

const BUYS_NOTHING: Readonly<Record<Decider, string>> = {
  overload: 'buys nothing: overload ends these outages, not an empty battery',
  cold: 'buys nothing: the cold ends these outages, not an empty battery',
  'enough sun': 'buys nothing that shows: the sun already carries the house',
  inverters: 'buys nothing: the inverters’ own appetite takes more than half of the sun that is caught',
  'no sun': 'buys next to nothing: no sun refills it',
  'no more sun': 'buys nothing: there is no more sun for a second battery to catch',
  'one leg': 'buys nothing clear: one leg decides, as the battery there is the one that runs empty',
  storage: 'buys nothing that these outages could tell from chance; more of them might',
};

export function deciderWords(compared: Comparison): string {
  return (verdictOf(compared) === 'longer' ? GAINS : BUYS_NOTHING)[deciderOf(compared)];
}
