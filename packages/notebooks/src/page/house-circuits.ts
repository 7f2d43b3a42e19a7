/** The circuits: which leg, how essential, what is on them. */
import { html } from '../elements.ts';
import type { ScenarioSpec } from '@rideout/sim';
import { freshId } from './house-draft.ts';
import { addFrom, pressButton, type HouseFields } from './house-fields.ts';
import { fileButton, measuredWords } from './house-files-given.ts';
import { withoutCircuit } from './house-removals.ts';
import type { HouseTables, TypicalChoice } from './house-tables.ts';

type Circuit = ScenarioSpec['circuits'][number];
type Appliance = Circuit['appliances'][number];

const LEGS = [
  { value: 'L1', label: 'L1' },
  { value: 'L2', label: 'L2' },
  { value: 'both', label: '240 V (both)' },
];
const TIERS = ['1, last to go', '2', '3', '4', '5, first to go'].map((label, i) => ({
  value: String(i + 1),
  label,
}));
const NEEDS = ['food', 'water', 'warmth', 'cool', 'medical', 'light', 'talk'];

export function circuitsPart(fields: HouseFields, tables: HouseTables): HTMLElement {
  const { draft } = fields;
  const choices = tables.choices.map(({ id, title }) => ({ value: id, label: title }));
  const add = (id: string) => {
    const choice = tables.choices.find((c) => c.id === id)!;
    draft.add(['circuits'], newCircuit(choice, draft.spec));
  };
  return html`<div>
    <ol class="house-circuits">
      ${draft.spec.circuits.map((circuit, c) => circuitRow(fields, tables, circuit, c))}
    </ol>
    ${addFrom('A new circuit with', choices, add, 'Add a circuit')}
  </div>`;
}

/** On the leg with fewer circuits, in the middle tier. */
function newCircuit({ id, title, is240V }: TypicalChoice, { circuits, units }: ScenarioSpec): object {
  const onLeg = (leg: string) => circuits.filter((c) => c.leg === leg).length;
  const fed = units.flatMap(({ leg }) => (leg === 'both' ? (['L1', 'L2'] as const) : leg));
  const legs = fed.sort((a, b) => onLeg(a) - onLeg(b));
  return {
    id: freshId(id, circuits),
    title: title.split(',')[0],
    leg: is240V && units.length === 2 ? 'both' : legs[0],
    tier: 3,
    appliances: [{ typical: id }],
  };
}

function circuitRow(fields: HouseFields, tables: HouseTables, circuit: Circuit, c: number): HTMLElement {
  const at = ['circuits', c] as const;
  const name = circuit.title ?? circuit.id;
  const needs = [...new Set([...NEEDS, ...(circuit.need === undefined ? [] : [circuit.need])])];
  return html`<li>
    <fieldset class="house-set">
      <legend class="heard">Circuit ${name}</legend>
      <div class="house-grid house-row">
        ${fields.text([...at, 'title'], { label: 'Circuit' })}
        ${fields.choice([...at, 'leg'], { label: 'Leg' }, LEGS)}
        ${fields.choice([...at, 'tier'], { label: 'Tier' }, TIERS)}
      </div>
      <details data-about=${`circuit ${circuit.id}`}>
        <summary>${onItWords(circuit, tables)}</summary>
        ${circuit.appliances.map((appliance, a) => applianceRow(fields, tables, circuit, appliance, c, a))}
        ${addAppliance(fields, tables, c)}
        ${fileButton('Or a measured load instead (CSV with time and watts)', '.csv,.txt', { circuit: c }, fields)}
        <div class="house-grid">
          ${fields.choice([...at, 'need'], { label: 'Serves' }, [
            { value: '', label: 'nothing in particular' },
            ...needs.map((value) => ({ value, label: value })),
          ])}
          ${fields.number([...at, 'graceMinutes'], { label: 'May go without for', unit: 'min' })}
          ${fields.number([...at, 'breakerA'], { label: 'Breaker', unit: 'A' })}
        </div>
        ${pressButton('Take this circuit away', () => fields.draft.replace(withoutCircuit(fields.draft.spec, c), { at }), name)}
      </details>
    </fieldset>
  </li>`;
}

function addAppliance({ draft }: HouseFields, tables: HouseTables, c: number): HTMLElement {
  const choices = tables.choices.map(({ id, title }) => ({ value: id, label: title }));
  return addFrom('Also on this circuit', choices, (id) => {
    const there = draft.spec.circuits[c]!.appliances.findIndex(
      (a) => 'typical' in a && String(a.typical) === id,
    );
    if (there < 0) return draft.add(['circuits', c, 'appliances'], { typical: id });
    const path = ['circuits', c, 'appliances', there, 'count'];
    draft.set(path, Number(draft.at(path) ?? 1) + 1, 'shape');
  });
}

function applianceRow(
  fields: HouseFields,
  tables: HouseTables,
  circuit: Circuit,
  appliance: Appliance,
  c: number,
  a: number,
): HTMLElement {
  const at = ['circuits', c, 'appliances', a] as const;
  const name = applianceName(appliance, tables);
  const remove = pressButton('Take away', () => fields.draft.remove(at), name);
  const measured = 'kind' in appliance && appliance.kind === 'measured' ? appliance : undefined;
  if (measured)
    return html`<div class="house-appliance">
      <p>
        <strong>Measured: ${String(measured.file)}.</strong> ${measuredWords(fields, String(measured.file))}
      </p>
      <div class="house-grid">
        ${fields.number([...at, 'scale'], { label: 'Times', hint: '1000 when the file is in kilowatts' })}
        ${circuit.appliances.length > 1 ? remove : ''}
      </div>
    </div>`;
  const usual =
    'typical' in appliance ? tables.typical.get(String(appliance.typical))?.['runningW'] : undefined;
  return html`<div class="house-appliance">
    <p><strong>${name}</strong></p>
    <div class="house-grid">
      ${fields.number([...at, 'runningW'], {
        label: 'Running',
        unit: 'W',
        ...(usual === undefined ? {} : { usual: Number(usual) }),
      })}
      ${fields.number([...at, 'count'], { label: 'How many', usual: 1 })}
      ${circuit.appliances.length > 1 ? remove : ''}
    </div>
  </div>`;
}

function onItWords(circuit: Circuit, tables: HouseTables): string {
  const names = circuit.appliances.map((appliance) => {
    const count = Number((appliance as { count?: unknown }).count ?? 1);
    return `${count > 1 ? `${count} × ` : ''}${applianceName(appliance, tables)}`;
  });
  return `On it: ${names.join('; ')}`;
}

function applianceName(appliance: Appliance, tables: HouseTables): string {
  const named = appliance as {
    title?: unknown;
    id?: unknown;
    typical?: unknown;
    kind?: unknown;
    file?: unknown;
  };
  const row = tables.choices.find(({ id }) => id === named.typical);
  for (const name of [named.title, row?.title, named.id, named.file, named.typical, named.kind])
    if (typeof name === 'string') return name;
  return 'appliance';
}
