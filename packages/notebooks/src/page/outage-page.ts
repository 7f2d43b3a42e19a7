/** Everything the page about one outage starts from: as any page, with one strategy, one draw, and a part of it. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import type { OutageLook, OutageRange } from '../charts/outage-view.ts';
import { openPage, type OpenPage } from './open-page.ts';
import { outageLink, outageSettingsFrom, type OutageSettings } from './outage-link.ts';
import type { Choices, ViewSettings } from './page-settings.ts';
import { group, translated, type SettingsForm } from './settings-forms.ts';

/** Which draw, and how its times and temperatures are written. */
export type OutageChoice = OutageLook & { readonly draw: number };

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
  readonly outageForm: SettingsForm<OutageChoice>;
  readonly span: OutageSpan;
}

export const MOST_DRAW = 999_999;

export function openOutagePage(): OutagePage {
  const asked = location.hash; // before the usual page rewrites it
  const usual = usualLook();
  const page = openPage({
    own: (own) => ({ ...own, view: { ...own.view, strategyIds: own.view.strategyIds.slice(0, 1) } }),
    viewForm: oneStrategyForm,
  });
  const { settings, complaints } = outageSettingsFrom(asked, usual);
  const outageForm = outageChoiceForm(settings);
  const span = new OutageSpan();
  span.value = settings.range;
  const now = (): OutageSettings => ({ ...outageForm.value, range: span.value });
  const tellLink = () => {
    const more = outageLink(now(), usual);
    const words = [location.hash.slice(1), more].filter((word) => word !== '').join('&');
    history.replaceState(null, '', `#${words}`);
  };
  const tellAnew = () => {
    history.replaceState(null, '', `#${withoutOutage(location.hash)}`);
    tellLink();
  };
  for (const form of [page.runForm, page.viewForm]) form.addEventListener('input', tellLink); // after the page’s own
  for (const form of [outageForm, span]) form.addEventListener('input', tellAnew);
  addEventListener('hashchange', ({ newURL }) => {
    const linked = outageSettingsFrom(new URL(newURL).hash, usual).settings;
    outageForm.value = linked;
    outageForm.dispatchEvent(new CustomEvent('input'));
    span.set(linked.range);
  });
  return { ...page, complaints: [...page.complaints, ...complaints], outageForm, span };
}

/** As the reader's browser writes times and degrees. */
function usualLook(): OutageSettings {
  const american = /-US$/.test(navigator.language);
  return { draw: 0, clock: american ? 12 : 24, temperature: american ? 'F' : 'C', range: undefined };
}

function withoutOutage(hash: string): string {
  const said = new URLSearchParams(hash.replace(/^#/, ''));
  for (const name of ['draw', 'clock', 'degrees', 'minutes', 'at']) said.delete(name);
  return said.toString().replaceAll('%2C', ',');
}

function oneStrategyForm(choices: Choices, start: ViewSettings): SettingsForm<ViewSettings> {
  const select = (list: Choices['strategies'], label: string, value: string) =>
    Inputs.select(
      list.map((item) => item.id),
      { label, value, format: (id) => list.find((item) => item.id === id)!.title },
    );
  const form = Inputs.form(
    {
      alternativeId: select(choices.alternatives, 'One of the households in the file', start.alternativeId),
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

function outageChoiceForm(start: OutageSettings): SettingsForm<OutageChoice> {
  const form = Inputs.form(
    {
      draw: Inputs.number([0, MOST_DRAW], { label: 'Outage number (from 0)', step: 1, value: start.draw }),
      clock: Inputs.select([24, 12], {
        label: 'Clock',
        value: start.clock,
        format: (h) => (h === 24 ? '24 hours (18:30)' : '12 hours (6:30 pm)'),
      }),
      temperature: Inputs.select(['C', 'F'], {
        label: 'Temperatures',
        value: start.temperature,
        format: (t) => (t === 'C' ? '°C' : '°F'),
      }),
    },
    {
      template: ({ draw, clock, temperature }) =>
        html`<div class="controls screen-only">
          ${group('Outage', draw)}${group('Written in', clock, temperature)}
        </div>`,
    },
  );
  return translated(
    form,
    ({ draw, clock, temperature }) => ({
      draw: Math.floor(draw),
      clock: clock as 12 | 24,
      temperature: temperature as 'C' | 'F',
    }),
    ({ draw, clock, temperature }) => ({ draw, clock, temperature }),
  );
}
