/** What the command line asked for instead of what the scenario file says: figures are repeated only with the same. */
import type { Provenance } from '../trials/study-summary.ts';
import type { TerminalLook } from './render-style.ts';

/** Options that stand in for something in the file. */
export interface Overrides {
  readonly weather?: string | undefined;
  readonly months?: readonly number[] | undefined;
  readonly published?: string | undefined;
  readonly hours?: readonly number[] | undefined;
  readonly perYear?: number | undefined;
  readonly budget?: number | undefined;
  readonly confidence?: number | undefined;
  readonly alternative?: string | undefined;
  readonly strategy?: string | undefined;
}

const OPTION: Readonly<Record<keyof Overrides, string>> = {
  weather: '--weather',
  months: '--months',
  published: '--published',
  hours: '--hours',
  perYear: '--per-year',
  budget: '--budget',
  confidence: '--confidence',
  alternative: '--alternative',
  strategy: '--strategy',
};

/** As they would be typed, such as `--months 1,7`; empty when everything is as in the file. */
export function overridesTyped(options: Overrides): string {
  return (Object.keys(OPTION) as (keyof Overrides)[])
    .filter((key) => options[key] !== undefined)
    .map((key) => `${OPTION[key]}\u00a0${typed(options[key]!)}`)
    .join(' ');
}

function typed(value: string | number | readonly number[]): string {
  const text = String(value); // a list of numbers with commas between
  return /^[\w./,-]+$/.test(text) ? text : JSON.stringify(text);
}

/** The same figures, saying so wherever they go. */
export function withAsked<Told extends { readonly provenance: Pick<Provenance, 'askedWith'> }>(
  told: Told,
  options: Overrides,
): Told {
  const askedWith = overridesTyped(options).replaceAll('\u00a0', ' ');
  return askedWith === '' ? told : { ...told, provenance: { ...told.provenance, askedWith } };
}

/** A sentence below “To repeat these figures”, where there is anything to say. */
export function overridesNote({ overrides = '' }: TerminalLook): string[] {
  return overrides === '' ? [] : [`They were asked for with ${overrides}; give the same again.`];
}
