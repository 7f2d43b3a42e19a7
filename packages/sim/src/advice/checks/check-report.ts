/** What a check of a scenario says: what was found, what could not be looked at, and what it rests on. */
import type { Provenance } from '../../trials/study-summary.ts';
import type { CheckRule } from './check-rules.ts';

/** Most pressing first. */
export const SEVERITIES = ['mend', 'watch', 'note'] as const;
/** How pressing a finding is. */
export type Severity = (typeof SEVERITIES)[number];

/** What each severity is called, and what it means. */
export const SEVERITY_WORDS: Readonly<
  Record<Severity, { readonly title: string; readonly meaning: string }>
> = {
  mend: { title: 'Mend first', meaning: 'past a rule or a rating, or cannot work as written' },
  watch: { title: 'Watch out', meaning: 'likely to trip, stop or disappoint' },
  note: { title: 'Good to know', meaning: 'nothing to mend, but it shapes what to expect' },
};

/** One number behind a finding. `unit` is `A`, `W`, `V`, `%`, `°C`, …; empty for counts. */
export interface CheckNumber {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
}

/** One thing to look into, with the rule that it is held to. */
export interface CheckFinding {
  /** Id of the check, such as `leg-load`. */
  readonly check: string;
  readonly severity: Severity;
  /** Place in the scenario, list items by their id: `units.east.wiring.inletA`. */
  readonly where: string;
  /** One or two sentences. */
  readonly found: string;
  readonly numbers: readonly CheckNumber[];
  /** What to do about it. */
  readonly todo: string;
  readonly rule: CheckRule;
}

/** Something that could not be looked at because the scenario does not say. */
export interface Unchecked {
  readonly check: string;
  /** Places in the scenario, separated by commas. */
  readonly where: string;
  readonly why: string;
  /** Keys that would let it be looked at. */
  readonly keys: readonly string[];
}

/** One subject of the check, whether or not it found anything. */
export interface CheckSubject {
  readonly id: string;
  readonly title: string;
  readonly findings: number;
  readonly unchecked: number;
  /** How many things it looked at; 0 when the scenario has nothing of the kind. */
  readonly looked: number;
}

/** What a check of a scenario found, and what it could not look at. */
export interface CheckReport {
  readonly provenance: Provenance;
  readonly alternativeId: string;
  readonly alternativeTitle: string;
  /** Days of each draw that were watched minute by minute. */
  readonly watchedDays: number;
  /** Most pressing first; within a severity in the order of the subjects. */
  readonly findings: readonly CheckFinding[];
  readonly unchecked: readonly Unchecked[];
  readonly subjects: readonly CheckSubject[];
  /** To stand under it wherever it is shown. */
  readonly caution: string;
}

/** A finding before it knows its subject. */
export type DraftFinding = Omit<CheckFinding, 'check'>;
export type DraftUnchecked = Omit<Unchecked, 'check'>;

/** What one subject gives back. */
export interface CheckOutcome {
  readonly looked: number;
  readonly findings: readonly DraftFinding[];
  readonly unchecked: readonly DraftUnchecked[];
}

/** One thing looked at, with what was found. */
export function looked(...findings: readonly DraftFinding[]): Partial<CheckOutcome> {
  return { looked: 1, findings };
}

/** Something that could not be looked at. */
export function unknown(where: string, why: string, ...keys: readonly string[]): Partial<CheckOutcome> {
  return { unchecked: [{ where, why, keys }] };
}

/** The same words about several places are told once, with the places side by side. */
export function mergeUnchecked(all: readonly Unchecked[]): Unchecked[] {
  const kinds = new Map<string, Unchecked[]>();
  for (const one of all) {
    const kind = `${one.check} ${one.why}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), one]);
  }
  return [...kinds.values()].map((same) => ({
    ...same[0]!,
    where: [...new Set(same.map((one) => one.where))].join(', '),
    keys: [...new Set(same.flatMap((one) => one.keys))],
  }));
}

/** Several outcomes of one subject as one. */
export function joinOutcomes(parts: readonly Partial<CheckOutcome>[]): CheckOutcome {
  return {
    looked: parts.reduce((sum, p) => sum + (p.looked ?? 0), 0),
    findings: parts.flatMap((p) => p.findings ?? []),
    unchecked: parts.flatMap((p) => p.unchecked ?? []),
  };
}
