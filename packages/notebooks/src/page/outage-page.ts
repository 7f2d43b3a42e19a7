/** Everything the page about one outage starts from: as any page, with one strategy, one draw, and a part of it. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import type { OutageRange } from '../charts/outage-view.ts';
import { openPage, type OpenPage } from './open-page.ts';
import { OUTAGE_WORDS, outageLink, outageSettingsFrom } from './outage-link.ts';
import { usualStrategy } from './one-strategy-form.ts';
import { saidIn, type LinkPart } from './page-link.ts';
import type { Choices, ViewSettings } from './page-settings.ts';
import { group, ofHouseholds, translated, type SettingsForm } from './settings-forms.ts';
import { wholeNumber } from './whole-number.ts';

/** A value that a page reads and sets, like an input; sends `input` when it changes. */
export class OutageSpan extends EventTarget {
  /** Undefined: the whole outage. */
  value: OutageRange | undefined;

  set(value: OutageRange | undefined): void {
    this.value = value;
    this.dispatchEvent(new CustomEvent('input'));
  }
}

export interface OutagePage extends OpenPage {
  /** The number of the outage. */
  readonly outageForm: SettingsForm<number>;
  readonly span: OutageSpan;
}

export const MOST_DRAW = 999_999;

export function openOutagePage(): OutagePage {
  const outageForm = outageNumberForm(outageSettingsFrom(saidIn(location.hash)).settings.draw);
  const span = new OutageSpan();
  const page = openPage({
    own: (own, { scenario }) => {
      const strategyIds = [usualStrategy(scenario.alternatives[0]!.household.strategies)];
      return { ...own, view: { ...own.view, strategyIds } };
    },
    viewForm: oneStrategyForm,
    shows: { clock: true, temperature: true },
    parts: [outagePart(outageForm, span)],
  });
  return { ...page, outageForm, span };
}

function outagePart(form: SettingsForm<number>, span: OutageSpan): LinkPart {
  return {
    words: OUTAGE_WORDS,
    forms: [form, span],
    say: () => outageLink({ draw: form.value, range: span.value }),
    take: (said) => {
      const { settings, complaints } = outageSettingsFrom(said);
      form.value = settings.draw;
      span.value = settings.range;
      return { complaints };
    },
  };
}

function oneStrategyForm(choices: Choices, start: ViewSettings): SettingsForm<ViewSettings> {
  const select = (list: Choices['strategies'], label: string, value: string) =>
    Inputs.select(
      list.map((item) => item.id),
      { label, value, format: (id) => list.find((item) => item.id === id)!.title },
    );
  const form = Inputs.form(
    {
      alternativeId: ofHouseholds(
        select(choices.alternatives, 'One of the households in the file', start.alternativeId),
      ),
      strategyId: select(choices.strategies, 'Strategy', start.strategyIds[0] ?? choices.strategies[0]!.id),
    },
    {
      template: ({ alternativeId, strategyId }) =>
        html`<div class="controls screen-only">
          ${group('Household and strategy', alternativeId, strategyId)}
        </div>`,
    },
  );
  return translated(
    form,
    ({ alternativeId, strategyId }) => ({ alternativeId, strategyIds: [strategyId] }),
    ({ alternativeId, strategyIds }) => ({
      alternativeId,
      strategyId: strategyIds[0] ?? choices.strategies[0]!.id,
    }),
  );
}

function outageNumberForm(start: number): SettingsForm<number> {
  const number = wholeNumber([0, MOST_DRAW], { label: 'Outage number (from 0)', value: start });
  const form = Inputs.form(
    { draw: number },
    { template: ({ draw }) => html`<div class="controls screen-only">${group('Outage', draw)}</div>` },
  );
  return translated(
    form,
    ({ draw }) => Math.floor(draw),
    (draw) => ({ draw }),
  );
}
