/** A line under a setting that says why what stands in it cannot be, and what still holds: nothing is swallowed. */
import { html } from '../elements.ts';

let made = 0;

export interface SettingFault {
  readonly note: HTMLElement;
  /** Empty: what stands there can be. */
  readonly tell: (words: string) => void;
}

export function settingFault(input: HTMLInputElement): SettingFault {
  const note = html`<p class="setting-fault" role="status"></p>`;
  note.id = `setting-fault-${++made}`;
  const tell = (words: string) => {
    note.textContent = words;
    if (words === '') {
      for (const name of ['aria-invalid', 'aria-describedby']) input.removeAttribute(name);
      return;
    }
    input.setAttribute('aria-invalid', 'true');
    input.setAttribute('aria-describedby', note.id);
  };
  return { note, tell };
}

/** 20 000: in threes, from five figures on. */
export function spaced(n: number): string {
  return n < 10_000 ? String(n) : String(n).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}
