/** The frame every chart stands in: finding, picture, the same in sentences, the same in numbers, where it is from. */
import { html } from '../elements.ts';
import { savePicture, saveText } from './chart-export.ts';
import { changesSentence, type ToldProvenance } from './changes-sentence.ts';
import { simulatedOutages } from './outage-count.ts';
import { dataTable, tableCsv, type DataTable } from './data-table.ts';

export interface ChartParts {
  /** Names the chart's files and ties its parts together; one chart of that name on a page. */
  readonly id: string;
  /** The finding, as a sentence. */
  readonly title: string;
  /** What is drawn, with units. */
  readonly note: string;
  readonly picture: SVGSVGElement;
  /** What each look in the picture stands for; always in sight. */
  readonly key: readonly { readonly sample: SVGElement; readonly text: string }[];
  /** What the picture shows, where the key does not say it already. */
  readonly sentences?: readonly string[];
  readonly table: DataTable;
  /** Of a whole study; or the line as it is to stand. */
  readonly provenance: ToldProvenance | string;
  /** The alternative that the figures are of, where the study has others. */
  readonly alternative?: string | undefined;
}

/** The line that lets somebody else repeat the figures. */
export function provenanceText(from: ToldProvenance | string, alternative?: string): string {
  if (typeof from === 'string') return from;
  const household = alternative === undefined ? from.scenarioTitle : `${from.scenarioTitle}: ${alternative}`;
  return (
    `${household}.${changesSentence(from.changes)} ${simulatedOutages(from.draws)}, seed “${from.seed}”, weather: ${from.weatherName}. ` +
    `Scenario ${from.scenarioHash}, Rideout ${from.version}.`
  );
}

/** A figure element. The picture is one image to a screen reader; the sentences and the table are its content. */
export function chartFrame(parts: ChartParts): HTMLElement {
  const { id, title, note, key, sentences = [], table } = parts;
  const foot = provenanceText(parts.provenance, parts.alternative);
  return html`<figure class="chart" id=${id} aria-labelledby=${`${id}-title`}>
    <figcaption>
      <h2 class="chart-title" id=${`${id}-title`}>${title}</h2>
      <p class="chart-note">${note}</p>
    </figcaption>
    <div
      class="chart-picture"
      role="img"
      aria-label=${`Chart: ${title}`}
      aria-describedby=${sentences.length ? `${id}-key ${id}-words` : `${id}-key`}
    >
      ${silenced(parts.picture)}
    </div>
    <ul class="chart-key" id=${`${id}-key`}>
      ${key.map(({ sample, text }) => html`<li>${silenced(sample)}<span>${text}</span></li>`)}
    </ul>
    <details open=${isOpen(id)}>
      <summary>${sentences.length ? 'The same in words and numbers' : 'The same in numbers'}</summary>
      ${
        sentences.length
          ? html`<ul id=${`${id}-words`}>
              ${sentences.map((text) => html`<li>${text}</li>`)}
            </ul>`
          : ''
      }
      <div class="table-scroll" tabindex="0" role="region" aria-label=${`Table: ${title}`}>
        ${dataTable(table)}
      </div>
    </details>
    <div class="chart-foot">${exportButtons(parts, foot)}</div>
    <p class="provenance">${foot}</p>
  </figure>`;
}

function exportButtons(
  { id, title, note, picture, key, table }: ChartParts,
  foot: string,
): readonly HTMLElement[] {
  const parts = { picture, title, note, key, foot };
  const button = (label: string, save: () => void | Promise<void>) =>
    html`<button type="button" onclick=${() => void save()} aria-label=${`${label}: ${title}`}>
      ${label}
    </button>`;
  return [
    button('Save as SVG', () => savePicture(parts, `${id}.svg`)),
    button('Save as PNG', () => savePicture(parts, `${id}.png`)),
    button('Save the table as CSV', () => saveText(tableCsv(table, foot), 'text/csv', `${id}.csv`)),
  ];
}

/** A chart drawn anew stays as far open as it was. */
function isOpen(id: string): boolean {
  return document.getElementById(id)?.querySelector('details')?.open ?? false;
}

/** A drawing that says nothing by itself: the frame speaks for it. */
function silenced<T extends SVGElement>(picture: T): T {
  picture.setAttribute('aria-hidden', 'true');
  picture.setAttribute('focusable', 'false');
  return picture;
}
