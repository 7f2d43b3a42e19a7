/** What a reader of the figures should look at twice in the household's file: a clock or a weather of another place, a mended gap. */
import { html } from '../elements.ts';
import { embeddedStudy } from './embedded-study.ts';

/** Of the household that the page was published with; empty where there is nothing odd. */
export function lookTwice(): HTMLElement {
  return lookTwiceAt(embeddedStudy().notes ?? []);
}

export function lookTwiceAt(notes: readonly string[]): HTMLElement {
  if (notes.length === 0) return html`<div></div>`;
  return html`<div class="look-twice" role="note">
    <p><strong>Look twice at what these figures were made from.</strong></p>
    ${notes.map((note) => html`<p>${noteWords(note)}</p>`)}
  </div>`;
}

const SIZES: Readonly<Record<string, string>> = {
  continuousW: 'continuous rating',
  capacityWh: 'capacity of a module',
  peakW: 'peak of its panels',
};

/** In words: whoever reads the page does not have the keys of the file before them. */
export function noteWords(note: string): string {
  const words = note
    .replace(/^site: /, '')
    .replace(/^weather\.normals: (\S+) is (\d+ km)/, 'The weather is that of “$1”, $2')
    .replace(/\b(latitude|longitude)Deg\b/g, '$1')
    .replace(/^units\.([^.]+)\.\S+?\.?(continuousW|capacityWh|peakW): /, (_, unit: string, key: string) => {
      return `unit “${unit}”, ${SIZES[key]!}: `;
    });
  return words.charAt(0).toUpperCase() + words.slice(1);
}
