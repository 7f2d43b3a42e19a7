/** A setting that is a whole number: one that cannot be is not swallowed, it is said what can and what still holds. */
import * as Inputs from '@observablehq/inputs';
import { html } from '../elements.ts';
import type { SettingsForm } from './settings-forms.ts';

export interface WholeNumberWords {
  readonly label: string;
  readonly value: number;
}

let made = 0;

export function wholeNumber(
  [least, most]: readonly [number, number],
  { label, value }: WholeNumberWords,
): SettingsForm<number> {
  const form = Inputs.number([least, most], { label, step: 1, value });
  const input = form.querySelector<HTMLInputElement>('input')!;
  const note = html`<p class="setting-fault" role="status"></p>`;
  note.id = `setting-fault-${++made}`;
  const tell = (isFaulty: boolean) => {
    note.textContent = isFaulty
      ? `A whole number from ${spaced(least)} to ${spaced(most)}, please; still showing ${spaced(form.value)}.`
      : '';
    if (!isFaulty) {
      for (const name of ['aria-invalid', 'aria-describedby']) input.removeAttribute(name);
      return;
    }
    input.setAttribute('aria-invalid', 'true');
    input.setAttribute('aria-describedby', note.id);
  };
  // An empty field is one that somebody is about to fill, until they leave it.
  input.addEventListener('input', () => tell(input.value !== '' && !input.validity.valid));
  input.addEventListener('change', () => tell(!input.validity.valid));
  const outer = html`<div>${form}${note}</div>`;
  Object.defineProperty(outer, 'value', {
    get: () => form.value,
    set: (to: number) => {
      form.value = to;
      tell(false);
    },
  });
  return outer as SettingsForm<number>;
}

/** 20 000: in threes, from five figures on. */
function spaced(n: number): string {
  return n < 10_000 ? String(n) : String(n).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}
