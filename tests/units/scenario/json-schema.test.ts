/** The schema that editors read. Checked by the words of JSON Schema 2020-12 that it uses, and no others. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { scenarioJsonSchema } from '../../../packages/sim/src/index.ts';
import { HOUSE } from './written.ts';

type Schema = Record<string, unknown>;

const ROOT = new URL('../../../', import.meta.url);
const shipped = JSON.parse(
  readFileSync(new URL('packages/sim/scenario.schema.json', ROOT), 'utf8'),
) as Schema;
const demos = readdirSync(new URL('data/', ROOT)).filter((name) => name.endsWith('.yaml'));

/** Words that only describe. */
const NOTES = ['$schema', 'title', 'description', 'default', 'format'];

/** Where `value` does not fit `schema`; empty when it does. Throws on a word it does not know, so that none is passed over. */
function misfits(schema: Schema, value: unknown, at = ''): string[] {
  return Object.entries(schema).flatMap(([word, rule]) => {
    if (NOTES.includes(word)) return [];
    const check = CHECKS[word];
    if (check === undefined) throw new Error(`JSON Schema’s ${word} is not checked here`);
    return check(rule, value, at, schema);
  });
}

type Check = (rule: unknown, value: unknown, at: string, schema: Schema) => string[];
const isBlock = (value: unknown): value is Schema =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const unless = (fits: boolean, at: string, what: string) => (fits ? [] : [`${at} ${what}`]);
const numeric =
  (fits: (value: number, rule: number) => boolean, what: string): Check =>
  (rule, value, at) =>
    typeof value === 'number' ? unless(fits(value, rule as number), at, `${what} ${String(rule)}`) : [];
const sized =
  (fits: (size: number, rule: number) => boolean, what: string): Check =>
  (rule, value, at) =>
    Array.isArray(value) || typeof value === 'string'
      ? unless(fits(value.length, rule as number), at, `${what} ${String(rule)}`)
      : [];

const TYPES: Record<string, (value: unknown) => boolean> = {
  object: isBlock,
  array: Array.isArray,
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  integer: Number.isInteger,
  boolean: (value) => typeof value === 'boolean',
};

const CHECKS: Record<string, Check> = {
  type: (rule, value, at) => unless(TYPES[rule as string]!(value), at, `is no ${String(rule)}`),
  const: (rule, value, at) => unless(value === rule, at, `is not ${String(rule)}`),
  enum: (rule, value, at) => unless((rule as unknown[]).includes(value), at, `is none of ${String(rule)}`),
  pattern: (rule, value, at) =>
    unless(
      typeof value !== 'string' || new RegExp(rule as string, 'u').test(value),
      at,
      `does not match ${String(rule)}`,
    ),
  minimum: numeric((value, rule) => value >= rule, 'is below'),
  maximum: numeric((value, rule) => value <= rule, 'is above'),
  exclusiveMinimum: numeric((value, rule) => value > rule, 'is not above'),
  exclusiveMaximum: numeric((value, rule) => value < rule, 'is not below'),
  minItems: sized((size, rule) => size >= rule, 'is shorter than'),
  maxItems: sized((size, rule) => size <= rule, 'is longer than'),
  minLength: sized((size, rule) => size >= rule, 'is shorter than'),
  maxLength: sized((size, rule) => size <= rule, 'is longer than'),
  required: (rule, value, at) =>
    isBlock(value)
      ? (rule as string[]).filter((key) => !(key in value)).map((key) => `${at} lacks ${key}`)
      : [],
  properties: (rule, value, at) =>
    isBlock(value)
      ? Object.entries(rule as Record<string, Schema>).flatMap(([key, part]) =>
          key in value ? misfits(part, value[key], `${at}.${key}`) : [],
        )
      : [],
  additionalProperties: (rule, value, at, schema) => {
    if (!isBlock(value)) return [];
    const others = Object.keys(value).filter((key) => !(key in ((schema['properties'] ?? {}) as Schema)));
    return others.flatMap((key) =>
      rule === false ? [`${at} knows no ${key}`] : misfits(rule as Schema, value[key], `${at}.${key}`),
    );
  },
  propertyNames: (rule, value, at) =>
    isBlock(value) ? Object.keys(value).flatMap((key) => misfits(rule as Schema, key, `${at}.${key}`)) : [],
  items: (rule, value, at) =>
    Array.isArray(value) ? value.flatMap((item, i) => misfits(rule as Schema, item, `${at}.${i}`)) : [],
  prefixItems: (rule, value, at) =>
    Array.isArray(value)
      ? (rule as Schema[]).flatMap((part, i) => misfits(part, value[i], `${at}.${i}`))
      : [],
  anyOf: (rule, value, at) =>
    unless(
      (rule as Schema[]).some((part) => misfits(part, value).length === 0),
      at,
      'fits no shape',
    ),
  oneOf: (rule, value, at) =>
    unless(
      (rule as Schema[]).filter((part) => misfits(part, value).length === 0).length === 1,
      at,
      'fits no one shape',
    ),
};

/** Every place with a default, and what is said of it. */
function defaultsIn(part: unknown, at = ''): [string, unknown][] {
  if (Array.isArray(part)) return part.flatMap((item) => defaultsIn(item, at));
  if (!isBlock(part)) return [];
  const own: [string, unknown][] = 'default' in part && 'type' in part ? [[at, part['description']]] : [];
  const below = Object.entries(part).filter(([word]) => !['default', 'const', 'enum'].includes(word));
  return [...own, ...below.flatMap(([word, value]) => defaultsIn(value, `${at}.${word}`))];
}

describe('the JSON Schema of a scenario', () => {
  it('is the one that is shipped', () => {
    expect(shipped).toEqual(JSON.parse(JSON.stringify(scenarioJsonSchema())));
  });

  it.each([...demos, 'the test’s own house'])('accepts %s', (name) => {
    const text = demos.includes(name) ? readFileSync(new URL(`data/${name}`, ROOT), 'utf8') : HOUSE;
    expect(misfits(shipped, parse(text))).toEqual([]);
  });

  it('has demos to accept', () => {
    expect(demos.length).toBeGreaterThanOrEqual(2);
  });

  it.each([
    ['horizonDays: 7', 'horizenDays: 7', '.outage knows no horizenDays'],
    ['surgeW: 6000', 'surgeW: lots', '.units.0.inverter.surgeW is no number'],
    ['startFraction: 0.9', 'startFraction: 90', '.units.0.battery.startFraction is above 1'],
    ['leg: both', 'leg: L3', '.circuits.2.leg is none of L1,L2,both'],
    ['  latitudeDeg: 42\n', '', '.site lacks latitudeDeg'],
    ['kind: steady', 'kind: steddy', '.circuits.1.appliances.1 fits no shape'],
  ])('refuses %s written as %s', (part, by, misfit) => {
    expect(misfits(shipped, parse(HOUSE.replace(part, by)))).toContain(misfit);
  });

  it('gives every default its description', () => {
    const described = defaultsIn(shipped);
    expect(described.length).toBeGreaterThan(60);
    expect(described.filter(([, text]) => text === undefined)).toEqual([]);
  });

  it('describes what is not plain from a key’s name', () => {
    const texts = JSON.stringify(shipped).match(/"description":/g) ?? [];
    expect(texts.length).toBeGreaterThan(30);
  });
});
