/** By hand or by a switch: what difference it makes, in words. */
import {
  intervalText,
  reachText,
  type Estimate,
  type Scenario,
  type StrategySummary,
  type StudySummary,
} from '@rideout/sim';
import { html } from '../elements.ts';
import { shownStrategies } from '../charts/nine-in-ten-words.ts';

type Strategy = Scenario['alternatives'][number]['household']['strategies'][number];

/** Sentences about the household (alternative) shown. `scenario`: as simulated, the reader's changes included. */
export function switchingWords(scenario: Scenario, study: StudySummary, alternativeId: string): string[] {
  const household = (scenario.alternatives.find((a) => a.id === alternativeId) ?? scenario.alternatives[0]!)
    .household;
  const summaries = shownStrategies(study, { alternativeId });
  const summaryOf = ({ id }: Strategy) => summaries.find((s) => s.strategyId === id);
  const twins = twinsOf(household.strategies);
  const said = twins.flatMap(([person, machine]) => {
    const [byPerson, bySwitch] = [summaryOf(person), summaryOf(machine)];
    return byPerson && bySwitch ? [comparison(byPerson, bySwitch, study.horizonDays)] : [];
  });
  return said.length > 0 ? [...said, PERSON_NOTE] : [withoutTwins(household.strategies)];
}

const PERSON_NOTE =
  'A person looks now and then and sleeps at night; a switch looks every minute. The rules are the same.';

const TRY_IT = 'Choose “Circuits are switched” below to see the same rules carried out the other way.';

/** Strategies with the very same rules, one carried out by a person and one by a switch. */
function twinsOf(strategies: readonly Strategy[]): [Strategy, Strategy][] {
  const rules = ({ rules }: Strategy) => JSON.stringify(rules);
  const machines = strategies.filter((s) => s.carriedOutBy === 'switch');
  return strategies
    .filter((s) => s.carriedOutBy === 'person')
    .flatMap((person): [Strategy, Strategy][] => {
      const machine = machines.find((m) => rules(m) === rules(person));
      return machine ? [[person, machine]] : [];
    });
}

function comparison(person: StrategySummary, machine: StrategySummary, horizonDays: number): string {
  const how = (s: StrategySummary) =>
    `${reachText(s.nineInTenDays.value, horizonDays)} (${intervalText(s.nineInTenDays, horizonDays)})`;
  const verdict = overlap(person.nineInTenDays, machine.nineInTenDays)
    ? 'These intervals overlap: with so few outages the difference may be chance.'
    : 'The intervals do not overlap: the difference is more than chance.';
  return (
    `By hand or by a switch? “${person.strategyTitle}” keeps the essentials on for ${how(person)} in nine outages in ten; ` +
    `the same rules in an automatic switch, “${machine.strategyTitle}”, for ${how(machine)}. ${verdict}`
  );
}

/** Null is the horizon or more. */
function overlap(a: Estimate, b: Estimate): boolean {
  const low = (e: Estimate) => e.low ?? Infinity;
  const high = (e: Estimate) => e.high ?? Infinity;
  return low(a) <= high(b) && low(b) <= high(a);
}

function withoutTwins(strategies: readonly Strategy[]): string {
  const kinds = new Set(strategies.map((s) => s.carriedOutBy));
  if (kinds.size === 2)
    return `Some strategies here are carried out by a person and some by a switch, but no two differ in that alone. ${TRY_IT}`;
  const by = kinds.has('switch')
    ? 'an automatic switch, which looks every minute'
    : 'a person, who looks now and then and sleeps at night';
  return `Every strategy here is carried out by ${by}. ${TRY_IT}`;
}

export function switchingNote(scenario: Scenario, study: StudySummary, alternativeId: string): HTMLElement {
  return html`<div class="switching">
    ${switchingWords(scenario, study, alternativeId).map((text) => html`<p>${text}</p>`)}
  </div>`;
}
