/** The card itself: one side of paper, black on white. */
import { html } from '../elements.ts';
import {
  reachText,
  scenarioHash,
  VERSION,
  type AlternativeSpec,
  type Scenario,
  type StudySummary,
} from '@rideout/sim';
import type { Look } from '../charts/look.ts';
import { simulatedOutages, tooFewToTell } from '../charts/outage-count.ts';
import { cardPlan, type ByLeg, type CardPlan } from './card-steps.ts';
import { sourceLines, type SourceLine } from './card-sources.ts';
import { afterTripSteps, coldestOutdoorsC, cutOffWords, emptyWords, whoWords } from './card-words.ts';
import { cautionsFor } from './cautions.ts';

type Household = AlternativeSpec['household'];
type Strategy = Household['strategies'][number];

export function cardSheet(
  scenario: Scenario,
  alternative: AlternativeSpec,
  strategy: Strategy,
  look: Look,
  summary?: StudySummary,
): HTMLElement {
  const { household } = alternative;
  const { clock } = look;
  const plan = cardPlan(household, strategy, clock);
  const sources = sourceLines(household, strategy, clock);
  return html`<article class="card" aria-labelledby="card-title">
    <header>
      <h2 id="card-title">Power is out: ${strategy.title}</h2>
      <p class="card-house">${scenario.title}</p>
    </header>
    <p class="card-who">${whoWords(household, strategy, clock)}</p>
    ${holdsWords(summary, alternative, strategy)} ${stepsTable(plan, household)} ${rulesList(plan)}
    ${sourcesList(sources)}
    ${stoppedSection(household, plan, cutOffWords(household, coldestOutdoorsC(scenario), look))}
    ${numbersToWrite()}
    <section class="card-cautions">
      <h3>Careful</h3>
      <ul>
        ${cautionsFor(
          household,
          sources.map(({ how }) => how),
        ).map((text) => html`<li>${text}</li>`)}
      </ul>
    </section>
    <footer>
      ${alternative.title}. Scenario ${scenarioHash(scenario).slice(0, 12)}, Rideout ${VERSION}. The readings
      are the batteries’ own: state of charge.
    </footer>
  </article>`;
}

/** How long it holds, where the page was made with figures that can tell. */
function holdsWords(
  summary: StudySummary | undefined,
  { id }: AlternativeSpec,
  strategy: Strategy,
): HTMLElement | string {
  const known = summary?.strategies.find((s) => s.alternativeId === id && s.strategyId === strategy.id);
  if (!summary || !known || tooFewToTell(known.draws)) return '';
  return html`<p class="card-holds">
    In nine outages in ten the essentials then hold for
    ${reachText(known.nineInTenDays.value, summary.horizonDays)} (${simulatedOutages(known.draws)}).
  </p>`;
}

/** Filled in by hand: nobody looks a number up in the dark. */
function numbersToWrite(): HTMLElement {
  return html`<section class="card-numbers" aria-label="Numbers to call, to be written in">
    ${['Electrician', 'Utility', 'Neighbour'].map((who) => html`<p>${who} <span></span></p>`)}
  </section>`;
}

const LEGS = [
  ['L1', 'leg\u00a0L1'],
  ['L2', 'leg\u00a0L2'],
  ['both', '240\u00a0V'],
] as const;

/**
 * Columns only for legs that have a circuit. The roles are spelt out because a phone shows each step as a block, and a
 * table that is laid out as blocks is no table to a screen reader otherwise.
 */
function stepsTable({ steps, staysOn }: CardPlan, { circuits }: Household): HTMLElement {
  const legs = LEGS.filter(([leg]) => circuits.some((circuit) => circuit.leg === leg));
  const cells = (state: string, of: ByLeg) =>
    legs.map(
      ([leg, name]) =>
        html`<td role="cell" data-label=${`${state} ${name}`} class=${of[leg].length ? '' : 'none'}>
          ${namesOf(of[leg])}
        </td>`,
    );
  return html`<div class="card-table">
    <table role="table" aria-label="What to switch off">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">Battery</th>
          ${legs.map(([, name]) => html`<th role="columnheader" scope="col">Off on ${name}</th>`)}
          <th role="columnheader" scope="col">Back on</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${steps.map(
          ({ when, off, backOn }, i) =>
            html`<tr role="row">
              <th role="rowheader" scope="row">
                <span class="card-number">${i + 1}</span> <span class="card-when">${when}</span>
              </th>
              ${cells('Off on', off)}
              <td role="cell" data-label="Back on">${backOn || 'with the grid'}</td>
            </tr>`,
        )}
        <tr role="row" class="card-stays">
          <th role="rowheader" scope="row">Stays on</th>
          ${cells('On', staysOn)}
          <td role="cell" class="none">always</td>
        </tr>
      </tbody>
    </table>
  </div>`;
}

/** Each name whole on its line or lines; a box to tick would be worn after one outage. */
function namesOf(names: readonly string[]): HTMLElement | string {
  if (names.length === 0) return '–';
  return html`<ul>
    ${names.map((name) => html`<li>${name}</li>`)}
  </ul>`;
}

function rulesList({ rules }: CardPlan): HTMLElement | string {
  if (rules.length === 0) return '';
  return html`<section>
    <h3>Also, whatever the reading</h3>
    <ul>
      ${rules.map((rule) => html`<li>${rule}</li>`)}
    </ul>
    <p>A circuit named more than once on this card is on only while every line allows it.</p>
  </section>`;
}

function sourcesList(lines: readonly SourceLine[]): HTMLElement | string {
  if (lines.length === 0) return '';
  return html`<section class="card-sources">
    <h3>Getting energy back</h3>
    <ul>
      ${lines.map(({ what, how }) => html`<li><strong>${what}.</strong> ${how}</li>`)}
    </ul>
  </section>`;
}

/** Two cases that look alike from across the room, and ask for opposite things: the reading tells them apart. */
function stoppedSection(household: Household, plan: CardPlan, cutOff: string): HTMLElement {
  return html`<section class="card-stopped">
    <h3>When a unit has stopped: read its battery first</h3>
    <p>
      <strong>At the reading at which it stops itself, its battery is empty.</strong> ${cutOff}
      ${emptyWords(household)}
    </p>
    <p><strong>Well above that, it has tripped:</strong></p>
    <ol>
      ${afterTripSteps(household, plan).map((step) => html`<li>${step}</li>`)}
    </ol>
  </section>`;
}
