/** Controls of a page about one strategy: which, and in which household. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import type { Choices, ViewSettings } from './page-settings.ts';
import { group, ids, titleOf, translated, type SettingsForm } from './settings-forms.ts';

export interface OneStrategyLabels {
  /** Over the choice of household, and before it. */
  readonly legend: string;
  readonly household: string;
}

/** A link may name several strategies; the first of them is meant. No choice of household where there is only one. */
export function oneStrategyForm(
  choices: Choices,
  start: ViewSettings,
  { legend, household }: OneStrategyLabels,
): SettingsForm<ViewSettings> {
  const { alternatives, strategies } = choices;
  const shown = ({ alternativeId, strategyIds }: ViewSettings) => ({
    alternativeId: ids(alternatives).includes(alternativeId) ? alternativeId : alternatives[0]!.id,
    strategyId: strategyIds[0] ?? strategies[0]!.id,
  });
  const form = Inputs.form(
    {
      alternativeId: Inputs.select(ids(alternatives), {
        label: household,
        format: titleOf(alternatives),
        value: shown(start).alternativeId,
      }),
      strategyId: Inputs.select(ids(strategies), {
        label: 'One of the strategies in the file',
        format: titleOf(strategies),
        value: shown(start).strategyId,
      }),
    },
    {
      template: (i) =>
        html`<div class="controls screen-only">
          ${group('Strategy', i.strategyId)}${alternatives.length > 1 ? group(legend, i.alternativeId) : ''}
        </div>`,
    },
  );
  return translated(
    form,
    ({ alternativeId, strategyId }): ViewSettings => ({ alternativeId, strategyIds: [strategyId] }),
    shown,
  );
}

/** The strategy a page starts with: the first that switches anything off, as that is what somebody would plan on. */
export function usualStrategy(
  strategies: readonly { readonly id: string; readonly rules?: readonly unknown[] | undefined }[],
): string {
  return (strategies.find((s) => (s.rules?.length ?? 0) > 0) ?? strategies[0]!).id;
}
