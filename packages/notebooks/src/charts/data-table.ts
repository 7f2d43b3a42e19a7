/** The numbers behind a chart: on the page and as a file, from the same rows. */
import { csvFormat } from 'd3-dsv';
import { html } from '../elements.ts';

export interface DataTable {
  readonly caption: string;
  /** The first column names the row; columns marked `number` stand to the right. */
  readonly columns: readonly { readonly name: string; readonly number?: boolean }[];
  /** Cells as shown, one per column. */
  readonly rows: readonly (readonly string[])[];
  /** Unrounded values for the file, one object per row; null = did not happen, or beyond the horizon. */
  readonly exact: readonly Readonly<Record<string, string | number | null>>[];
}

export function dataTable({ caption, columns, rows }: DataTable): HTMLElement {
  const look = (column: number) => (columns[column]?.number ? 'number' : '');
  return html`<table>
    <caption>
      ${caption}
    </caption>
    <thead>
      <tr>
        ${columns.map(({ name }, i) => html`<th scope="col" class=${look(i)}>${name}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (cells) =>
          html`<tr>
            ${cells.map((text, i) =>
              i === 0 ? html`<th scope="row">${text}</th>` : html`<td class=${look(i)}>${text}</td>`,
            )}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** Comma-separated, full precision; empty = null. The last column says in every row where the figures are from. */
export function tableCsv({ exact }: DataTable, study: string): string {
  return `${csvFormat(exact.map((row) => ({ ...row, study })))}\n`;
}
