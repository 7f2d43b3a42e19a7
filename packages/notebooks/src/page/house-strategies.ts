/** The strategies: ready-made ones to add, every threshold to change. */
import { html } from '../elements.ts';
import type { ScenarioSpec } from '@rideout/sim';
import { freshId } from './house-draft.ts';
import { addFrom, pressButton, type HouseFields } from './house-fields.ts';
import { readyStrategies } from './house-ready-strategies.ts';
import type { Path } from './house-schema.ts';

type Strategy = ScenarioSpec['strategies'][number];
type Rule = NonNullable<Strategy['rules']>[number];

const BY_WHOM = [
  { value: 'person', label: 'a person, while awake' },
  { value: 'switch', label: 'an automatic switch' },
];

/** What a rule is called, and one to start from. */
const RULES: Readonly<Record<Rule['by'], { label: string; start: (spec: ScenarioSpec) => Rule }>> = {
  charge: {
    label: 'Off while the battery is low',
    start: (spec) => ({
      by: 'charge',
      circuits: leastTier(spec),
      dropBelowFraction: 0.5,
      restoreAboveFraction: 0.7,
    }),
  },
  outage: {
    label: 'Off from the first moment',
    start: (spec) => ({ by: 'outage', circuits: leastTier(spec) }),
  },
  clock: {
    label: 'On only at certain hours',
    start: (spec) => ({ by: 'clock', circuits: leastTier(spec), onDuring: ['07:00-08:00', '18:00-19:00'] }),
  },
  sun: {
    label: 'On only while the sun delivers',
    start: (spec) => ({ by: 'sun', circuits: leastTier(spec), solarAboveW: 600 }),
  },
  ration: {
    label: 'On for part of each hour',
    start: (spec) => ({ by: 'ration', circuits: leastTier(spec), onMinutesPerHour: 20 }),
  },
  sleep: {
    label: 'One unit sleeps',
    start: ({ units }) => ({
      by: 'sleep',
      unit: units.at(-1)!.id,
      during: ['22:30-06:30'],
      circuits: 'moved',
    }),
  },
};

function leastTier({ circuits }: ScenarioSpec): { tiers: number[] } {
  return { tiers: [Math.max(...circuits.map((c) => c.tier))] };
}

export function strategiesPart(fields: HouseFields): HTMLElement {
  const { draft } = fields;
  const ready = readyStrategies(draft.spec);
  const add = (title: string) => {
    const chosen = ready.find((strategy) => strategy.title === title)!;
    const again = draft.spec.strategies.filter((s) => s.title.startsWith(title)).length;
    const named = {
      id: freshId(title, draft.spec.strategies),
      title: again > 0 ? `${title} (${again + 1})` : title,
    };
    draft.add(['strategies'], { ...chosen, ...named });
  };
  return html`<div>
    ${draft.spec.strategies.map((strategy, s) => strategySet(fields, strategy, s))}
    ${addFrom(
      'A ready-made strategy',
      ready.map(({ title }) => ({ value: title, label: title })),
      add,
      'Add this strategy',
    )}
  </div>`;
}

function strategySet(fields: HouseFields, strategy: Strategy, s: number): HTMLElement {
  const { draft } = fields;
  const at = ['strategies', s] as const;
  const rules = strategy.rules ?? [];
  const kinds = Object.entries(RULES).map(([value, { label }]) => ({ value, label }));
  const addRule = (kind: string) => draft.add([...at, 'rules'], RULES[kind as Rule['by']].start(draft.spec));
  return html`<details class="house-set" data-about=${`strategy ${strategy.id}`}>
    <summary>${strategy.title}</summary>
    <div class="house-grid house-two">
      ${fields.text([...at, 'title'], { label: 'Strategy' })}
      ${fields.choice([...at, 'carriedOutBy'], { label: 'Carried out by' }, BY_WHOM)}
    </div>
    ${rules.length === 0 ? html`<p class="soft">No rule: nothing is ever switched off.</p>` : ''}
    ${rules.map((rule, r) => ruleSet(fields, rule, [...at, 'rules', r]))}
    ${addFrom('A rule', kinds, addRule, 'Add this rule')}
    ${
      draft.spec.strategies.length > 1
        ? pressButton('Take this strategy away', () => draft.remove(at), strategy.title)
        : ''
    }
  </details>`;
}

function ruleSet(fields: HouseFields, rule: Rule, at: Path): HTMLElement {
  const { label } = RULES[rule.by];
  return html`<fieldset class="house-set">
    <legend>${label}</legend>
    <div class="house-grid">${ruleFields(fields, rule, at)}</div>
    ${rule.by === 'sleep' ? '' : circuitChoice(fields, rule, at)}
    ${pressButton('Take this rule away', () => fields.draft.remove(at), label)}
  </fieldset>`;
}

function ruleFields(fields: HouseFields, rule: Rule, at: Path): HTMLElement[] {
  const pair = fields.draft.spec.units.length === 2;
  switch (rule.by) {
    case 'charge':
      return [
        fields.percent([...at, 'dropBelowFraction'], { label: 'Off when the reading falls below' }),
        fields.percent([...at, 'restoreAboveFraction'], { label: 'On again when it rises above' }),
        ...(pair ? [fields.choice([...at, 'reads'], { label: 'The reading is that of' }, READS)] : []),
      ];
    case 'clock':
      return [fields.windows([...at, 'onDuring'], { label: 'On during', wide: true })];
    case 'sun':
      return [fields.number([...at, 'solarAboveW'], { label: 'All panels give at least', unit: 'W' })];
    case 'ration':
      return [
        fields.number([...at, 'onMinutesPerHour'], {
          label: 'On at the start of each hour for',
          unit: 'min',
        }),
        fields.choice([...at, 'whileAsleep'], { label: 'Overnight a person leaves them' }, ON_OFF),
      ];
    case 'sleep':
      return sleepFields(fields, rule, at);
    case 'outage':
      return [];
  }
}

const READS = [
  { value: 'lowest', label: 'the emptier battery' },
  { value: 'own', label: 'the circuit’s own leg' },
];
const ON_OFF = [
  { value: 'on', label: 'on' },
  { value: 'off', label: 'off' },
];
const MOVED = [
  { value: 'moved', label: 'move to the other unit' },
  { value: 'dropped', label: 'are off' },
];

function sleepFields(fields: HouseFields, rule: Extract<Rule, { by: 'sleep' }>, at: Path): HTMLElement[] {
  const units = fields.draft.spec.units.map(({ id }) => ({ value: id, label: id }));
  return [
    fields.choice([...at, 'unit'], { label: 'The unit' }, units),
    fields.choice([...at, 'circuits'], { label: 'Its 120 V circuits' }, MOVED),
    ...(rule.during
      ? [fields.windows([...at, 'during'], { label: 'Asleep during' })]
      : [
          fields.percent([...at, 'sleepBelowFraction'], { label: 'Asleep below' }),
          fields.percent([...at, 'wakeAboveFraction'], { label: 'Awake again above' }),
        ]),
  ];
}

/** A circuit must match every part given. */
function circuitChoice(fields: HouseFields, rule: Exclude<Rule, { by: 'sleep' }>, at: Path): HTMLElement {
  const { circuits } = fields.draft.spec;
  const tiers = [...new Set(circuits.map((c) => c.tier))].sort((a, b) => a - b);
  const legs = [...new Set(circuits.map((c) => c.leg))];
  const named = circuits.map((c) => ({ value: c.id, label: c.title ?? c.id }));
  const { ids, legs: byLeg } = rule.circuits;
  return html`<div>
    ${fields.ticks(
      [...at, 'circuits', 'tiers'],
      'Circuits of tier',
      tiers.map((value) => ({ value, label: String(value) })),
    )}
    <details data-about=${at.join(' ')} open=${ids !== undefined || byLeg !== undefined}>
      <summary>Or only certain ones</summary>
      ${fields.ticks(
        [...at, 'circuits', 'legs'],
        'Only on leg',
        legs.map((value) => ({ value, label: value === 'both' ? '240 V' : value })),
      )}
      ${fields.ticks([...at, 'circuits', 'ids'], 'Only these', named)}
    </details>
  </div>`;
}
