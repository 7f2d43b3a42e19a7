/** The card itself: one side of paper, black on white. */
import { html } from '../elements.ts';
import { scenarioHash, VERSION, type AlternativeSpec, type Scenario } from '@rideout/sim';
import { cardPlan, type ByLeg, type CardPlan } from './card-steps.ts';
import { afterTripSteps, cutOffWords, whoWords } from './card-words.ts';
import { CAUTIONS } from './cautions.ts';

type Household = AlternativeSpec['household'];
type Strategy = Household['strategies'][number];

export function cardSheet(scenario: Scenario, alternative: AlternativeSpec, strategy: Strategy): HTMLElement {
  const { household } = alternative;
  const plan = cardPlan(household, strategy);
  return html`<article class="card" aria-labelledby="card-title">
    <header>
      <h2 id="card-title">Power is out: ${strategy.title}</h2>
      <p class="card-house">${scenario.title}</p>
    </header>
    <p class="card-who">${whoWords(household, strategy)}</p>
    ${stepsTable(plan, household)} ${rulesList(plan)}
    <section>
      <h3>When a unit has stopped</h3>
      <ol>
        ${afterTripSteps(household).map((step) => html`<li>${step}</li>`)}
      </ol>
      <p>${cutOffWords(household)}</p>
    </section>
    <section class="card-cautions">
      <h3>Careful</h3>
      <ul>
        ${CAUTIONS.map((text) => html`<li>${text}</li>`)}
      </ul>
    </section>
    <footer>
      ${alternative.title}. Scenario ${scenarioHash(scenario).slice(0, 12)}, Rideout ${VERSION}. The readings
      are the batteries’ own: state of charge.
    </footer>
  </article>`;
}

const LEGS = [
  ['L1', 'Leg L1'],
  ['L2', 'Leg L2'],
  ['both', '240 V'],
] as const;

/** Columns only for legs that have a circuit. */
function stepsTable({ steps, staysOn }: CardPlan, { circuits }: Household): HTMLElement {
  const legs = LEGS.filter(([leg]) => circuits.some((circuit) => circuit.leg === leg));
  const cells = (off: ByLeg) => legs.map(([leg]) => html`<td>${namesOf(off[leg])}</td>`);
  return html`<div class="table-scroll" tabindex="0" role="region" aria-label="What to switch off">
    <table>
      <thead>
        <tr>
          <th scope="col">Battery</th>
          ${legs.map(([, name]) => html`<th scope="col">Off on ${name}</th>`)}
          <th scope="col">Back on</th>
        </tr>
      </thead>
      <tbody>
        ${steps.map(
          ({ when, off, backOn }, i) =>
            html`<tr>
              <th scope="row">
                <span class="card-number">${i + 1}</span> <span class="card-when">${when}</span>
              </th>
              ${cells(off)}
              <td>${backOn || 'with the grid'}</td>
            </tr>`,
        )}
        <tr class="card-stays">
          <th scope="row">Stays on</th>
          ${cells(staysOn)}
          <td>always</td>
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
