/** Choosing what the card is of, seeing it, printing it. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import { scenarioHash } from '@rideout/sim';
import { fitCard } from './card-fit.ts';
import { cardSheet } from './card-sheet.ts';
import { ownStyle } from './house-own-style.ts';
import { lookTwice } from './look-twice.ts';
import { usualStrategy } from './one-strategy-form.ts';
import { openPage } from './open-page.ts';
import type { Choices, ViewSettings } from './page-settings.ts';
import { group, translated, type SettingsForm } from './settings-forms.ts';
import { strategyNote } from './strategy-note.ts';
import { complaintsNote } from './trouble.ts';
import cardStyle from '../style/card.css?inline';

/** The card of the strategy in the link, or the first one that switches anything off. */
export function cardByThePanel(): HTMLElement {
  const page = openPage({
    own: (usual, { scenario }) => {
      const strategyIds = [usualStrategy(scenario.alternatives[0]!.household.strategies)];
      return { ...usual, view: { ...usual.view, strategyIds } };
    },
    runForm: 'none',
    viewForm: chooser,
    shows: { clock: true, temperature: true },
  });
  const { scenario, summary } = page.study;
  const note = html`<div class="screen-only"></div>`;
  const place = html`<div></div>`;
  const draw = () => {
    const { alternativeId, strategyIds } = page.viewForm.value;
    const alternative = scenario.alternatives.find(({ id }) => id === alternativeId)!;
    const strategy = alternative.household.strategies.find(({ id }) => id === strategyIds[0])!;
    const card = cardSheet(scenario, alternative, strategy, page.lookForm.value, summary);
    note.replaceChildren(strategyNote(scenario, summary, page.viewForm.value, 'Strategy on the card'));
    place.replaceChildren(card);
    void document.fonts.ready.then(() => fitted(card, place));
  };
  for (const form of [page.viewForm, page.lookForm]) form.addEventListener('input', draw);
  draw();
  return html`<div class="card-page" data-scenario=${scenarioHash(scenario)}>
    ${ownStyle(cardStyle)} ${complaintsNote(page.link)}
    <div class="screen-only">${lookTwice()}</div>
    <div class="card-controls">${page.viewForm}${page.lookForm}</div>
    ${note} ${printButton()} ${place}
  </div>`;
}

function chooser({ alternatives, strategies }: Choices, start: ViewSettings): SettingsForm<ViewSettings> {
  const select = (list: Choices['strategies'], label: string, value: string) =>
    Inputs.select(
      list.map(({ id }) => id),
      { label, value, format: (id) => list.find((item) => item.id === id)!.title },
    );
  const first = ({ strategyIds }: ViewSettings) => strategyIds[0] ?? strategies[0]!.id;
  const form = Inputs.form(
    {
      strategyId: select(strategies, 'Strategy on the card', first(start)),
      alternativeId: select(alternatives, 'Household', start.alternativeId),
    },
    {
      template: ({ strategyId, alternativeId }) =>
        html`<div class="controls screen-only">${group('The card of', strategyId, alternativeId)}</div>`,
    },
  );
  return translated(
    form,
    ({ alternativeId, strategyId }) => ({ alternativeId, strategyIds: [strategyId] }),
    (view) => ({ alternativeId: view.alternativeId, strategyId: first(view) }),
  );
}

function printButton(): HTMLElement {
  const button = html`<button type="button" class="screen-only">Print the card</button>`;
  button.addEventListener('click', () => print());
  return button;
}

function fitted(card: HTMLElement, place: HTMLElement): void {
  if (!card.isConnected) return;
  const { typePt, fits } = fitCard(card);
  card.style.setProperty('--card-type', `${typePt}pt`);
  card.dataset['typePt'] = String(typePt);
  if (fits) return;
  place.prepend(
    html`<div class="trouble screen-only" role="status">
      <p>
        This card is too long for one readable side. It will go on to a second: print on both sides, or give
        circuits that are always switched together one name.
      </p>
    </div>`,
  );
}
