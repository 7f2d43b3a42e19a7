/** Choosing what the card is of, seeing it, printing it. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import { scenarioHash } from '@rideout/sim';
import { fitCard } from './card-fit.ts';
import { cardSheet } from './card-sheet.ts';
import { embeddedStudy } from './embedded-study.ts';
import { ownStyle } from './house-own-style.ts';
import { choicesOf, ownSettings, settingsFromHash, settingsHash } from './page-settings.ts';
import { complaintsNote } from './trouble.ts';
import cardStyle from '../style/card.css?inline';

/** The card of the strategy in the link, or the first one that switches anything off. */
export function cardByThePanel(): HTMLElement {
  const study = embeddedStudy();
  const { scenario } = study;
  const choices = choicesOf(scenario);
  const { strategies } = scenario.alternatives[0]!.household;
  const usual = strategies.find(({ rules }) => rules.length > 0) ?? strategies[0]!;
  const own = ownSettings(study, choices);
  const start = { ...own, view: { ...own.view, strategyIds: [usual.id] } };
  const { settings, complaints } = settingsFromHash(location.hash, start, choices);
  const form = chooser(choices, settings.view);
  const place = html`<div></div>`;
  const draw = () => {
    const { alternativeId, strategyId } = form.value;
    const alternative = scenario.alternatives.find(({ id }) => id === alternativeId)!;
    const strategy = alternative.household.strategies.find(({ id }) => id === strategyId)!;
    const card = cardSheet(scenario, alternative, strategy);
    place.replaceChildren(card);
    void document.fonts.ready.then(() => fitted(card, place));
    const view = { alternativeId, strategyIds: [strategyId] };
    history.replaceState(null, '', `#${settingsHash({ ...start, view }, start)}`);
  };
  form.addEventListener('input', draw);
  draw();
  return html`<div class="card-page" data-scenario=${scenarioHash(scenario)}>
    ${ownStyle(cardStyle)} ${complaintsNote(complaints) ?? ''} ${form} ${printButton()} ${place}
  </div>`;
}

function chooser(
  choices: ReturnType<typeof choicesOf>,
  start: { alternativeId: string; strategyIds: readonly string[] },
) {
  const titleOf = (list: readonly { id: string; title: string }[]) => (id: string) =>
    list.find((item) => item.id === id)!.title;
  const ids = (list: readonly { id: string }[]) => list.map((item) => item.id);
  return Inputs.form(
    {
      strategyId: Inputs.select(ids(choices.strategies), {
        label: 'Strategy on the card',
        format: titleOf(choices.strategies),
        value: start.strategyIds[0] ?? choices.strategies[0]!.id,
      }),
      alternativeId: Inputs.select(ids(choices.alternatives), {
        label: 'Household',
        format: titleOf(choices.alternatives),
        value: start.alternativeId,
      }),
    },
    {
      template: ({ strategyId, alternativeId }) =>
        html`<div class="controls screen-only">
          <div>${strategyId}</div>
          <div>${alternativeId}</div>
        </div>`,
    },
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
