/** What has to be mended: said at its field, and in a list that leads there. */
import { html } from '../elements.ts';
import { spellPath, valueAt, type Finding, type ScenarioSpec } from '@rideout/sim';
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

/** A button that leads to the field that a place in the scenario stands in; its name alone where there is none. */
export function fieldButton(form: HTMLElement, where: string, spec: ScenarioSpec): HTMLElement | string {
  const field = placeOf({ path: where.split(',')[0]! }, fieldsByPath(form, spec));
  const input = field?.querySelector<HTMLElement>('input, select');
  if (!field || !input) return `(${where})`;
  return pressButton('Go to it', () => openAndFocus(input), where);
}

function markField(
  finding: Finding,
  places: ReadonlyMap<string, HTMLElement>,
  spec: ScenarioSpec,
): HTMLElement | string {
  const field = placeOf(finding, places);
  const words = findingWords(finding, places, spec);
  const input = field?.querySelector<HTMLElement>('input, select');
  if (!field || !input) return `${finding.path ? `${finding.path}: ` : ''}${words}`;
  const note = html`<p class="house-fault">${words}</p>`;
  note.id = `${input.id || field.dataset['path']!.replace(/\W+/g, '-')}-fault`;
  input.setAttribute('aria-invalid', 'true');
  input.setAttribute('aria-describedby', note.id);
  field.append(note);
  const label = `${itemName(field, spec)}${labelOf(field)}`;
  return html`<span>${pressButton(label, () => openAndFocus(input))} ${words}</span>`;
}

/** Neighbouring keys of the file are called by their labels here. */
function findingWords(
  { path, found, expected, hint }: Finding,
  places: ReadonlyMap<string, HTMLElement>,
  { outage }: ScenarioSpec,
): string {
  if (path === 'outage' && outage.months === undefined && outage.startLocal === undefined)
    return 'Tick at least one month, or give a date and time.';
  const around = path.slice(0, path.lastIndexOf('.') + 1);
  const inLabels = expected.replace(/\b[a-z]+[A-Z]\w*/g, (key) => {
    const neighbour = places.get(around + key);
    return neighbour ? `“${labelOf(neighbour)}”` : key;
  });
  const said = /^[[{]/.test(found) ? 'Expected' : `Found ${found}; expected`; // a block of a file tells nobody anything
  return `${said} ${inLabels}.${hint ? ` ${hint}` : ''}`;
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
