/** Something went wrong: what, and what to do about it. */
import { html } from '../elements.ts';
import { saidBy } from '../error-words.ts';
import type { PageLink } from './page-link.ts';

export function trouble(error: unknown, again?: () => void | Promise<void>): HTMLElement {
  const said = saidBy(error);
  return html`<div class="trouble" role="alert">
    <p><strong>The simulation stopped.</strong> It said: ${said}</p>
    <p>
      Put the settings back as they were, or try fewer simulated outages, and run it again. If it stops again,
      open the page in another browser, or publish it anew from the household’s file.
    </p>
    ${again ? html`<button type="button" onclick=${() => void again()}>Run again</button>` : ''}
  </div>`;
}

/** Parts of a link that the page could not follow; empty while there are none. */
export function complaintsNote(link: PageLink): HTMLElement {
  const note = html`<div></div>`;
  const tell = () => note.replaceChildren(...complaintsOf(link));
  link.addEventListener('input', tell);
  tell();
  return note;
}

function complaintsOf({ complaints }: PageLink): HTMLElement[] {
  if (complaints.length === 0) return [];
  return [
    html`<div class="trouble screen-only" role="alert">
      ${complaints.map((text) => html`<p>${text}</p>`)}
    </div>`,
  ];
}
