/** A setting that is a whole number: one that cannot be is not swallowed, it is said what can and what still holds. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import { settingFault, spaced } from './setting-fault.ts';
import type { SettingsForm } from './settings-forms.ts';

export interface WholeNumberWords {
  readonly label: string;
  readonly value: number;
}

export function wholeNumber(
  [least, most]: readonly [number, number],
  { label, value }: WholeNumberWords,
): SettingsForm<number> {
  const form = Inputs.number([least, most], { label, step: 1, value });
  const input = form.querySelector<HTMLInputElement>('input')!;
  const { note, tell } = settingFault(input);
  const tellOf = (isFaulty: boolean) =>
    tell(
      isFaulty
        ? `A whole number from ${spaced(least)} to ${spaced(most)}, please; still showing ${spaced(form.value)}.`
        : '',
    );
  // An empty field is one that somebody is about to fill, until they leave it.
  input.addEventListener('input', () => tellOf(input.value !== '' && !input.validity.valid));
  input.addEventListener('change', () => tellOf(!input.validity.valid));
  const outer = html`<div>${form}${note}</div>`;
  Object.defineProperty(outer, 'value', {
    get: () => form.value,
    set: (to: number) => {
      form.value = to;
      tell('');
    },
  });
  return outer as SettingsForm<number>;
}
