/** Fields of the form. Each writes to one place of the draft and takes its bounds and usual value from the schema. */
import { html } from '../elements.ts';
import { celsiusFrom, clockTimesIn, inDegrees, type Look } from '../charts/look.ts';
import type { HouseDraft } from './house-draft.ts';
import { stretchesFrom, stretchFrom } from './house-times.ts';
import { schemaAt, wholeSchema, type PartSchema, type Path } from './house-schema.ts';

export interface FieldWords {
  readonly label: string;
  /** Shown beside the label. */
  readonly unit?: string;
  readonly hint?: string;
  /** What holds while the field is empty, where the schema does not say it. */
  readonly usual?: number;
  /** Takes a whole row. */
  readonly wide?: boolean;
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** Makes fields for one draft. */
export class HouseFields {
  readonly draft: HouseDraft;
  readonly #schema: PartSchema = wholeSchema();
  readonly #look: () => Look;

  /** @param look how times and temperatures are written; the file always has °C and 24 hours */
  constructor(draft: HouseDraft, look: () => Look = () => ({ clock: 24, temperature: 'C' })) {
    this.draft = draft;
    this.#look = look;
  }

  number(path: Path, words: FieldWords): HTMLElement {
    return this.#typed(path, words, 1);
  }

  /** Written as a fraction, shown in per cent. */
  percent(path: Path, words: FieldWords): HTMLElement {
    return this.#typed(path, { unit: '%', ...words }, 100);
  }

  /** Written in °C, shown in the reader's degrees. */
  degrees(path: Path, words: FieldWords): HTMLElement {
    const look = this.#look();
    const now = this.draft.at(path);
    const usual = schemaAt(this.#schema, this.draft.spec, path).default;
    const shown = (celsius: unknown) =>
      typeof celsius === 'number' ? String(Number(inDegrees(celsius, look).toFixed(1))) : textOf(celsius);
    const input = html`<input
      type="number"
      step="any"
      value=${shown(now)}
      placeholder=${usual === undefined ? '' : `${shown(usual)} (usual)`}
    />`;
    listen(input, (text) => {
      const celsius = Number(celsiusFrom(Number(text), look).toFixed(4));
      this.draft.set(path, text === '' ? undefined : celsius);
    });
    return field(path, { ...words, unit: `°${look.temperature}` }, input);
  }

  /** A stretch of the day, such as 06:30-22:30. */
  stretch(path: Path, words: FieldWords): HTMLElement {
    const shown = (text: string) => clockTimesIn(text, this.#look().clock);
    const usual = textOf(schemaAt(this.#schema, this.draft.spec, path).default);
    const input = html`<input
      type="text"
      value=${shown(textOf(this.draft.at(path)))}
      placeholder=${shown(usual)}
    />`; // without "(usual)", for which there is no room
    listen(input, (text) => this.draft.set(path, text === '' ? undefined : stretchFrom(text)));
    return field(path, words, input);
  }

  /** A local date and time. */
  moment(path: Path, words: FieldWords): HTMLElement {
    const input = html`<input type="datetime-local" value=${textOf(this.draft.at(path))} />`;
    listen(input, (text) => this.draft.set(path, text.slice(0, 16)));
    return field(path, words, input);
  }

  text(path: Path, words: FieldWords & { readonly list?: string }): HTMLElement {
    const input = html`<input
      type="text"
      value=${textOf(this.draft.at(path))}
      placeholder=${this.#usual(path, 1)}
    />`;
    if (words.list) input.setAttribute('list', words.list);
    listen(input, (value) => this.draft.set(path, value === '' ? undefined : value));
    return field(path, words, input);
  }

  /** Windows of clock time, written with commas between them. */
  windows(path: Path, words: FieldWords): HTMLElement {
    const { clock } = this.#look();
    const now = (this.draft.at(path) as string[] | undefined) ?? [];
    const input = html`<input
      type="text"
      value=${clockTimesIn(now.join(', '), clock)}
      placeholder=${clockTimesIn('07:00-08:00, 18:00-19:00', clock)}
    />`;
    listen(input, (value) => this.draft.set(path, stretchesFrom(value)));
    return field(path, words, input);
  }

  /** '' takes the key away. */
  choice(path: Path, words: FieldWords, choices: readonly Choice[], shape = false): HTMLElement {
    const now = (this.draft.at(path) ?? schemaAt(this.#schema, this.draft.spec, path).default ?? '') as
      string | number;
    const isNumber = typeof now === 'number';
    const select = html`<select>
      ${choices.map((c) => html`<option value=${c.value} selected=${c.value === String(now)}>${c.label}</option>`)}
    </select>`;
    listen(select, (value) => {
      const written = value === '' ? undefined : isNumber ? Number(value) : value;
      this.draft.set(path, written, shape ? 'shape' : 'value');
    });
    return field(path, words, select);
  }

  tick(path: Path, words: FieldWords): HTMLElement {
    const now = this.draft.at(path) ?? schemaAt(this.#schema, this.draft.spec, path).default;
    const box = html`<input type="checkbox" checked=${now === true} />` as HTMLInputElement;
    box.addEventListener('input', () => this.draft.set(path, box.checked));
    return html`<div class="house-field ticked" data-path=${JSON.stringify(path)}>
      <label>${box}${words.label}</label>${hintOf(words)}
    </div>`;
  }

  /** A row of ticks that make a list; none ticked takes the key away. */
  ticks(
    path: Path,
    legend: string,
    choices: readonly { value: string | number; label: string }[],
  ): HTMLElement {
    const now = (this.draft.at(path) as (string | number)[] | undefined) ?? [];
    const boxes = choices.map(({ value }) => {
      const box = html`<input type="checkbox" checked=${now.includes(value)} />` as HTMLInputElement;
      box.addEventListener('input', () => {
        const ticked = choices.filter((_, i) => boxes[i]!.checked).map((c) => c.value);
        this.draft.set(path, ticked.length > 0 ? ticked : undefined);
      });
      return box;
    });
    return html`<fieldset class="house-ticks" data-path=${JSON.stringify(path)}>
      <legend>${legend}</legend>
      ${choices.map(({ label }, i) => html`<label>${boxes[i]}${label}</label>`)}
    </fieldset>`;
  }

  #typed(path: Path, words: FieldWords, scale: number): HTMLElement {
    const now = this.draft.at(path);
    const shown = typeof now === 'number' ? scaled(now, scale) : textOf(now);
    const input = html`<input
      type="number"
      step="any"
      value=${shown}
      placeholder=${words.usual === undefined ? this.#usual(path, scale) : `${scaled(words.usual, scale)} (typical)`}
    />`;
    listen(input, (text) => this.draft.set(path, text === '' ? undefined : Number(text) / scale));
    return field(path, words, input);
  }

  #usual(path: Path, scale: number): string {
    const usual = schemaAt(this.#schema, this.draft.spec, path).default;
    if (usual === undefined) return '';
    return `${typeof usual === 'number' ? scaled(usual, scale) : textOf(usual)} (usual)`;
  }
}

/** 0.07 × 100 is 7, whatever its last bit. */
function scaled(value: number, scale: number): string {
  return String(Number((value * scale).toPrecision(12)));
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

function listen(input: HTMLElement, take: (value: string) => void): void {
  input.addEventListener('input', () => take((input as HTMLInputElement).value));
}

function field(path: Path, words: FieldWords, input: HTMLElement): HTMLElement {
  input.id = `house-${path.join('-')}`;
  return html`<div
    class=${words.wide ? 'house-field wide' : 'house-field'}
    data-path=${JSON.stringify(path)}
    data-unit=${words.unit ?? ''}
  >
    <label for=${input.id}
      >${words.label}${words.unit ? html`<span class="soft">, ${words.unit}</span>` : ''}</label
    >
    ${input}${hintOf(words)}
  </div>`;
}

function hintOf({ hint }: FieldWords): HTMLElement | string {
  return hint ? html`<p class="house-hint">${hint}</p>` : '';
}

/** A button that changes the form. */
export function pressButton(label: string, press: () => void, about = ''): HTMLElement {
  const button = html`<button type="button">
    ${label}${about ? html`<span class="heard"> ${about}</span>` : ''}
  </button>`;
  button.addEventListener('click', press);
  return button;
}

/** Pick one, then press: for adding to a list. */
export function addFrom(
  label: string,
  choices: readonly Choice[],
  add: (value: string) => void,
  press = 'Add',
): HTMLElement {
  const select = html`<select aria-label=${label}>
    ${choices.map(({ value, label }) => html`<option value=${value}>${label}</option>`)}
  </select>` as HTMLSelectElement;
  return html`<div class="house-add">
    ${select}${pressButton(press, () => add(select.value), `: ${label}`)}
  </div>`;
}
