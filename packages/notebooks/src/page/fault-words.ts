/** What is wrong, in the words and units of the form: keys of the file, its fractions and its °C are not what was filled in. */
import type { Finding } from '@rideout/sim';
import { inDegrees } from '../charts/look.ts';

/** The field that a fault is told at. */
export interface FaultyField {
  /** As it stands beside its label; undefined: none, or no field at all. */
  readonly unit?: string | undefined;
  /** The field of another key of the same part: how it is labelled, and what the file has there. */
  readonly neighbour: (key: string) => { readonly label: string; readonly value: unknown } | undefined;
}

/** Lists that lack their first item, by their key. */
const FIRST_ITEMS: Readonly<Record<string, string>> = {
  circuits: 'Add at least one circuit.',
  strategies: 'Add at least one strategy.',
  units: 'Add at least one unit.',
  appliances: 'Add at least one appliance.',
  arrays: 'Add at least one set of panels.',
  during: 'Fill in at least one stretch of the day.',
  onDuring: 'Fill in at least one stretch of the day.',
};

const NUMBER = /(?<![\w.])-?\d+(?:\.\d+)?(?![\w.]*\w)/g;

/** A key of the file, and the number that follows where it is told. */
const KEY_AND_VALUE = /\b([a-z]+[A-Z]\w*)(?:, (-?\d[\d.]*(?:\u00a0[%°]\w?)?))?/g;

export function faultWords({ path, found, expected, hint }: Finding, field: FaultyField): string {
  const firstItem = found === '[]' ? FIRST_ITEMS[path.split('.').at(-1)!] : undefined;
  if (firstItem !== undefined) return firstItem;
  const isEmpty = found === 'nothing';
  const wanted = inFieldWords(expected, field, isEmpty);
  const help = hint && field.unit !== '%' ? ` ${hint}` : ''; // a hint there tells how to write a fraction
  if (isEmpty) return `Fill in ${wanted}.${help}`;
  const isBlock = /^[[{]/.test(found); // a block of a file tells nobody anything
  return `${isBlock ? 'Expected' : `Found ${inFieldUnit(found, field)}; expected`} ${wanted}.${help}`;
}

/** Limits in the field's unit; neighbouring keys by their labels, or, in a field still empty, by what stands there. */
function inFieldWords(expected: string, field: FaultyField, isEmpty: boolean): string {
  const { unit, neighbour } = field;
  const plain =
    unit === '%'
      ? expected.replace(/^a number$/, 'a percentage').replace(/^a fraction\b/, 'a level')
      : expected;
  const bare = unit === undefined ? plain : plain.replace(/^a number of (?=at )/, '');
  return inFieldUnit(bare, field).replace(KEY_AND_VALUE, (_, key: string, told: string | undefined) => {
    const other = neighbour(key);
    const value = told ?? (unit === '%' && typeof other?.value === 'number' ? spelt(other.value, field) : '');
    if (isEmpty && value !== '') return value;
    return `${other ? `“${other.label}”` : key}${value === '' ? '' : `, ${value}`}`;
  });
}

function spelt(value: number, field: FaultyField): string {
  return inFieldUnit(String(value), field);
}

/** Every number of the text as the field shows it, with its unit where that is another one than the file's. */
function inFieldUnit(text: string, { unit }: FaultyField): string {
  if (unit === '%') return text.replace(NUMBER, (n) => `${shortly(Number(n) * 100)}\u00a0%`);
  if (unit === '°F' || unit === '°C') {
    const temperature = unit === '°F' ? 'F' : 'C';
    return text.replace(NUMBER, (n) => `${shortly(inDegrees(Number(n), { temperature }))}\u00a0${unit}`);
  }
  return text;
}

/** What was filled in comes back as it was: 150, not 150.00008. */
function shortly(value: number): string {
  return String(Number(value.toFixed(2)));
}
