/** Why the second battery buys what it buys: storage, the sun, the inverters' own appetite, a leg, an overload. */
import { html } from '../elements.ts';
import { percent, type StudySummary } from '@rideout/sim';
import { comparison, type Comparison } from '../charts/alternatives-comparison.ts';
import { dataTable } from '../charts/data-table.ts';
import { deciderWords } from '../charts/decider-words.ts';
import { dailyEnergy, oneLeg, type DailyEnergy } from '../charts/alternatives-energy.ts';

export interface WhyOptions {
  readonly alternativeId: string;
  readonly strategyId: string;
  readonly legs: Readonly<Record<string, string>>;
}

export function alternativesWhy(study: StudySummary, options: WhyOptions): HTMLElement {
  const compared = comparison(study, options.alternativeId, options.strategyId);
  if (!compared) return html`<span></span>`;
  return html`<section aria-labelledby="why-title">
    <h2 id="why-title">“${compared.second.alternativeTitle}” ${deciderWords(compared)}</h2>
    <ul id="why-words">
      ${whySentences(compared, options.legs).map((text) => html`<li>${text}</li>`)}
    </ul>
    <div class="table-scroll" tabindex="0" role="region" aria-label="Table: where the energy went">
      ${dataTable(energyTable(compared))}
    </div>
  </section>`;
}

/** What the figures say, each sentence from the means below it. */
export function whySentences(compared: Comparison, legs: WhyOptions['legs']): string[] {
  const { first, second, horizonDays } = compared;
  const [a, b] = [dailyEnergy(first, horizonDays), dailyEnergy(second, horizonDays)];
  return [
    storageSentence(a, b),
    sunSentence(a, b),
    `The inverters take ${kWh(b.invertersKWh)} a day for themselves${b.solarKWh < 0.01 ? '' : `, ${percent(b.invertersKWh / Math.max(b.caughtKWh, 1e-9))} of the sun that is caught`} (${kWh(a.invertersKWh)} before). A bigger battery does not change that; a unit asleep takes less.`,
    ...legSentence(compared, legs),
  ];
}

function storageSentence(a: DailyEnergy, b: DailyEnergy): string {
  const more = b.storedAtStartKWh - a.storedAtStartKWh;
  if (Math.abs(more) < 0.05) return `Both begin with ${kWh(b.storedAtStartKWh)} in their batteries.`;
  const needs = b.servedKWh + b.invertersKWh + b.batteriesKWh;
  return `It begins with ${kWh(Math.abs(more))} ${more > 0 ? 'more' : 'less'} in the batteries, where the house and the losses take ${kWh(needs)} a day.`;
}

function sunSentence(a: DailyEnergy, b: DailyEnergy): string {
  if (b.solarKWh < 0.01) return 'There are no panels: nothing refills either battery.';
  const more = b.caughtKWh - a.caughtKWh;
  const told =
    Math.abs(more) < HARDLY_KWH
      ? 'hardly any difference'
      : `${kWh(Math.abs(more))} a day ${more > 0 ? 'more' : 'less'}`;
  return `The panels offer ${kWh(b.solarKWh)} a day; ${kWh(b.caughtKWh)} of it is caught, ${told} (${kWh(a.caughtKWh)} before), and ${kWh(b.lostKWh)} is turned away because nothing could take it.`;
}

const HARDLY_KWH = 0.05;

function legSentence({ second }: Comparison, legs: WhyOptions['legs']): string[] {
  const leg = oneLeg(second);
  if (!leg) return [];
  const name = legs[leg.unitId] ? `${legs[leg.unitId]} (${leg.unitId})` : leg.unitId;
  return [
    `Of the outages that end, ${percent(leg.fraction)} end with the battery on ${name}. The units cannot borrow from each other: moving a circuit to the other leg may buy as much as a battery.`,
  ];
}

function kWh(value: number): string {
  return `${value.toFixed(1)}\u00a0kWh`;
}

function energyTable(compared: Comparison) {
  const { first, second, horizonDays } = compared;
  const sides = [dailyEnergy(first, horizonDays), dailyEnergy(second, horizonDays)];
  const row = (name: string, of: (side: DailyEnergy) => number) => [
    name,
    ...sides.map((side) => of(side).toFixed(1)),
  ];
  return {
    caption: `Means over ${first.draws} outages of ${horizonDays} days each, kWh a day, also after the essentials went without.`,
    columns: [
      { name: 'Where the energy went' },
      { name: first.alternativeTitle, number: true },
      { name: second.alternativeTitle, number: true },
    ],
    rows: [
      row('Offered by the panels', (e) => e.solarKWh),
      row('Caught: used or stored', (e) => e.caughtKWh),
      row('Turned away', (e) => e.lostKWh),
      row('Taken by the inverters themselves', (e) => e.invertersKWh),
      row('Lost in the batteries', (e) => e.batteriesKWh),
      row('Served to the house', (e) => e.servedKWh),
      row('of which the essentials (tier 1)', (e) => e.essentialsKWh),
      row('In the batteries at the start (kWh)', (e) => e.storedAtStartKWh),
    ],
    exact: [],
  };
}
