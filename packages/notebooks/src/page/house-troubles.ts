/** What has to be mended: said at its field, and in a list that leads there. */
import { html } from '../elements.ts';
import { spellPath, valueAt, type Finding, type ScenarioSpec } from '@rideout/sim';
import { faultWords } from './fault-words.ts';
import { pressButton } from './house-fields.ts';
import { openAndFocus } from './house-focus.ts';
import type { Path } from './house-schema.ts';

/** Marks the fields and gives the list; nothing when there is nothing to mend. */
export function showTroubles(
  form: HTMLElement,
  findings: readonly Finding[],
  spec: ScenarioSpec,
): HTMLElement | undefined {
  form.querySelectorAll('.house-fault').forEach((note) => note.remove());
  form.querySelectorAll('[aria-invalid]').forEach((input) => {
    input.removeAttribute('aria-invalid');
    input.removeAttribute('aria-describedby');
  });
  if (findings.length === 0) return undefined;
  const places = fieldsByPath(form, spec);
  return html`<div class="trouble" role="status">
    <p>
      <strong
        >${findings.length === 1 ? 'One thing needs mending' : `${findings.length} things need mending`}</strong
      >
      before this can be simulated.
    </p>
    <ul>
      ${findings.map((finding) => html`<li>${markField(finding, places, spec)}</li>`)}
    </ul>
  </div>`;
}

/** Fields by the path a finding names them with. */
function fieldsByPath(form: HTMLElement, spec: ScenarioSpec): Map<string, HTMLElement> {
  const named = withNames(spec);
  const fields = [...form.querySelectorAll<HTMLElement>('[data-path]')];
  return new Map(
    fields.map((field) => [spellPath(named, JSON.parse(field.dataset['path']!) as Path), field]),
  );
}

/** Typical appliances are called by their row until they have an id. */
function withNames(spec: ScenarioSpec): unknown {
  return JSON.parse(JSON.stringify(spec), (_, part: unknown) => {
    const item = part as { id?: unknown; typical?: unknown } | null;
    return typeof item?.typical === 'string' && item.id === undefined ? { ...item, id: item.typical } : part;
  });
}

/** The field itself, or the nearest one around or inside the part that is meant. */
function placeOf(
  { path }: Pick<Finding, 'path'>,
  places: ReadonlyMap<string, HTMLElement>,
): HTMLElement | undefined {
  for (let around = path; around !== ''; around = around.slice(0, Math.max(0, around.lastIndexOf('.')))) {
    const exact = places.get(around);
    if (exact) return exact;
  }
  return [...places].find(([field]) => field.startsWith(`${path}.`))?.[1];
}

/** Buttons that lead from a place in the scenario to the field that it stands in, whatever the form has become. */
export interface FieldLinks {
  /** The place's name alone where there is no such field. */
  readonly to: (where: string) => HTMLElement | string;
  /** Of the buttons in here, those whose field is gone are out of use. */
  readonly follow: (list: HTMLElement) => void;
}

export function fieldLinks(form: HTMLElement, spec: () => ScenarioSpec): FieldLinks {
  const inputAt = (where: string, places = fieldsByPath(form, spec())) =>
    placeOf({ path: where.split(',')[0]! }, places)?.querySelector<HTMLElement>('input, select');
  return {
    to(where) {
      if (!inputAt(where)) return `(${where})`;
      const press = () => {
        const input = inputAt(where);
        if (input) openAndFocus(input);
      };
      const button = pressButton('Go to it', press, where);
      button.dataset['leadsTo'] = where;
      return button;
    },
    follow(list) {
      const places = fieldsByPath(form, spec());
      for (const button of list.querySelectorAll<HTMLButtonElement>('button[data-leads-to]'))
        button.disabled = !inputAt(button.dataset['leadsTo']!, places);
    },
  };
}

function markField(
  finding: Finding,
  places: ReadonlyMap<string, HTMLElement>,
  spec: ScenarioSpec,
): HTMLElement | string {
  const field = placeOf(lacksFirstTier(finding, spec) ? firstTierField(spec) : finding, places);
  const words = wordsOf(finding, field, places, spec);
  const input = field?.querySelector<HTMLElement>('input, select');
  if (!field || !input) return partWords(finding, words);
  const note = html`<p class="house-fault">${words}</p>`;
  note.id = `${input.id || field.dataset['path']!.replace(/\W+/g, '-')}-fault`;
  input.setAttribute('aria-invalid', 'true');
  input.setAttribute('aria-describedby', note.id);
  field.append(note);
  const label = `${itemName(field, spec)}${labelOf(field)}`;
  return html`<span>${pressButton(label, () => openAndFocus(input))} ${words}</span>`;
}

/** What no single field has wrong is told as what to do. */
function wordsOf(
  finding: Finding,
  field: HTMLElement | undefined,
  places: ReadonlyMap<string, HTMLElement>,
  spec: ScenarioSpec,
): string {
  const { path } = finding;
  const { outage } = spec;
  if (path === 'outage' && outage.months === undefined && outage.startLocal === undefined)
    return 'Tick at least one month, or give a date and time.';
  if (lacksFirstTier(finding, spec))
    return 'Give one circuit tier 1: the days end when such a circuit goes without.';
  const around = path.slice(0, path.lastIndexOf('.') + 1);
  return faultWords(finding, {
    unit: field?.dataset['unit'] || undefined,
    neighbour(key) {
      const other = places.get(around + key);
      if (!other) return undefined;
      const at = JSON.parse(other.dataset['path']!) as Path;
      return { label: labelOf(other), value: valueAt(spec, at) };
    },
  });
}

function lacksFirstTier({ path }: Finding, { circuits }: ScenarioSpec): boolean {
  return path === 'circuits' && circuits.length > 0 && !circuits.some(({ tier }) => tier === 1);
}

function firstTierField({ circuits: [first] }: ScenarioSpec): Pick<Finding, 'path'> {
  return { path: `circuits.${first!.id}.tier` };
}

/** Of a part without fields: by its path, unless the words say themselves what is to be added. */
function partWords({ path, found }: Finding, words: string): string {
  return path === '' || found === '[]' ? words : `${path}: ${words}`;
}

/** "Well pump: ", as many rows of a form have the same labels. */
function itemName(field: HTMLElement, spec: ScenarioSpec): string {
  const [list, place] = JSON.parse(field.dataset['path']!) as Path;
  if (typeof place !== 'number') return '';
  const item = valueAt(spec, [list!, place]) as { title?: unknown; id?: unknown } | undefined;
  const name = [item?.title, item?.id].find((n) => typeof n === 'string' && n !== '') as string | undefined;
  return name === undefined ? '' : `${name}: `;
}

function labelOf(field: HTMLElement): string {
  return field.querySelector('label, legend')?.textContent?.trim() ?? '';
}
