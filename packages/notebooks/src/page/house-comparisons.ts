/** The person who throws the switches, and what the household is compared with. */
import { html } from '../elements.ts';
import { valueAt, type ScenarioSpec } from '@rideout/sim';
import { freshId, type HouseDraft } from './house-draft.ts';
import { modulesWords } from './modules-everywhere.ts';
import { addFrom, pressButton, type HouseFields } from './house-fields.ts';

export function personPart(fields: HouseFields): HTMLElement {
  return html`<div class="house-grid">
    ${fields.stretch(['person', 'awake'], { label: 'Awake', hint: 'Empty: the usual hours, shown in grey.' })}
    ${fields.number(['person', 'looksEveryMinutes'], { label: 'Looks at the battery every', unit: 'min' })}
    ${fields.number(['person', 'tripReactionMinutes'], { label: 'From a trip noticed to the unit reset', unit: 'min' })}
    ${fields.percent(['usage', 'householdScatterFraction'], { label: 'Frugal and lavish weeks differ by' })}
  </div>`;
}

export function comparisonsPart(fields: HouseFields): HTMLElement {
  const { draft } = fields;
  const { alternatives = [] } = draft.spec;
  const numbers = Array.from({ length: 6 }, (_, i) => ({
    value: String(i + 1),
    label: modulesWords(i + 1),
  }));
  return html`<div>
    ${alternatives.map((alternative, a) => comparison(fields, alternative, a))}
    ${addFrom('Also with', numbers, (modules) => addModules(draft, Number(modules)), 'Compare with this too')}
  </div>`;
}

function comparison(
  fields: HouseFields,
  alternative: NonNullable<ScenarioSpec['alternatives']>[number],
  a: number,
): HTMLElement {
  const change = Object.entries(alternative.change ?? {});
  const words = [...new Set(change.map(([path, value]) => changeWords(path, value, fields.draft.spec)))];
  return html`<div class="house-grid house-row">
    ${fields.text(['alternatives', a, 'title'], { label: 'Household', hint: words.length > 0 ? `${words.join('; ')}.` : 'As described above.' })}
    ${pressButton('Take away', () => fields.draft.remove(['alternatives', a]), alternative.title)}
  </div>`;
}

const PARTS: Readonly<Record<string, string>> = {
  units: 'units',
  circuits: 'circuits',
  strategies: 'strategies',
  pair: 'the pair of units',
  person: 'the household’s day',
  usage: 'the household’s habits',
  sources: 'the generator and other sources',
};

/** A number of modules in full; of anything else what it is about, as its value may be a whole block of the file. */
function changeWords(path: string, value: unknown, spec: ScenarioSpec): string {
  const [part = '', name = '', ...rest] = path.split('.');
  if (part === 'units' && rest.join('.') === 'battery.modules' && typeof value === 'number') {
    const count = modulesWords(value);
    return name === '*' ? count : count.replace('each unit', `unit “${name}”`);
  }
  const list = valueAt(spec, [part]);
  const item = Array.isArray(list)
    ? (list as { id?: string; title?: string }[]).find(({ id }, i) => id === name || String(i) === name)
    : undefined;
  return `Differs in ${item ? `“${item.title ?? item.id ?? name}”` : (PARTS[part] ?? part)}`;
}

/** The household as described stays the one that the others are compared with. */
function addModules(draft: HouseDraft, modules: number): void {
  const { alternatives = [] } = draft.spec;
  const title = `${modules} module${modules > 1 ? 's' : ''} per unit`;
  const id = freshId(`modules-${modules}`, alternatives);
  draft.add(['alternatives'], { id, title, change: { 'units.*.battery.modules': modules } });
}
