/** A ladder as written, checked by building the households it leads to. */
import { applyChanges, nothingNamed } from './changes.ts';
import { sayingOf, type Finding } from './findings.ts';
import type { FittingLadder } from './fitting-parts.ts';
import { changeAt, partAt, placesAt, spelledOut, withoutParts } from './household-parts.ts';
import { ladderFindings } from './ladder-checks.ts';
import type { LocatedDocument, Path } from './located-document.ts';
import type { CheckedScenario } from './schema.ts';
import type { LadderSpec } from './schema-ladder.ts';
import { spellValue } from './schema-findings.ts';

export interface ReadLadder {
  readonly spec: LadderSpec;
  /** Paths of `start.without`, ids told. */
  readonly without: readonly string[];
  /** Per step, paths it brings, ids told. */
  readonly brings: readonly (readonly string[])[];
  readonly start: CheckedScenario;
  /** Per step, the household right after it: the start, what it needs, and itself. */
  readonly after: readonly CheckedScenario[];
}

/** A value against schema and cross-checks, faults added to `findings` with the line of `at`; undefined when it does not fit. */
export type CheckValue = (value: unknown, at: Path, findings: Finding[]) => CheckedScenario | undefined;

interface Reading {
  readonly document: LocatedDocument;
  readonly findings: Finding[];
  readonly check: CheckValue;
}

/**
 * Every step that is sound by itself is taken, with what it needs, whatever is wrong with the others.
 *
 * @param described the scenario that it belongs to
 * @returns undefined when there are findings, which are added to `findings`
 */
export function readLadder(
  described: CheckedScenario,
  ladder: FittingLadder,
  reading: Reading,
): ReadLadder | undefined {
  const { spec, unfit } = ladder;
  const scenario = { ...described, ladder: spec };
  const named = ladderFindings(scenario, ladder, reading.document);
  reading.findings.push(...named.start, ...named.steps.flat());
  if (named.start.length > 0) return undefined;
  const without = spelledOut(scenario, spec.start.without ?? []);
  const brings = spec.steps.map((step) => spelledOut(scenario, step.brings ?? []));
  const said = new Set<string>(); // of a step: it is not told again of those that need it
  const build = (counts: readonly number[], at: Path) => {
    const findings: Finding[] = [];
    const here = { ...reading, findings };
    const value = valueAfter(scenario, without, brings, counts, here);
    const checked = findings.length > 0 ? undefined : reading.check(value, at, findings);
    reading.findings.push(...findings.filter((finding) => !said.has(sayingOf(finding))));
    findings.forEach((finding) => said.add(sayingOf(finding)));
    return findings.length > 0 ? undefined : checked;
  };
  const start = build(zeros(spec), ['ladder', 'start']);
  const sound: boolean[] = [];
  const after = spec.steps.map((step, i) => {
    const needed = step.needs.every((need) => sound[positionOf(spec, need)]);
    sound.push(needed && !unfit.has(i) && named.steps[i]!.length === 0);
    return sound[i] ? build(countsWith(spec, i), ['ladder', 'steps', i]) : undefined;
  });
  const everything = spec.steps.map((step) => step.atMost);
  const all = sound.every(Boolean) ? build(everything, ['ladder', 'steps']) : undefined;
  if (start === undefined || after.includes(undefined) || all === undefined) return undefined;
  return { spec, without, brings, start, after: after as CheckedScenario[] };
}

const zeros = (spec: LadderSpec): number[] => spec.steps.map(() => 0);
const positionOf = (spec: LadderSpec, id: string): number => spec.steps.findIndex((step) => step.id === id);

/** One of step `i` and of everything it needs, and of what that needs. */
function countsWith(spec: LadderSpec, i: number): number[] {
  const counts = zeros(spec);
  const take = (step: number): void => {
    counts[step] = 1;
    spec.steps[step]!.needs.forEach((need) => take(positionOf(spec, need)));
  };
  take(i);
  return counts;
}

/** The scenario as it would be written, every default told, with each step taken so often. */
function valueAfter(
  scenario: CheckedScenario & { readonly ladder: LadderSpec },
  without: readonly string[],
  brings: readonly (readonly string[])[],
  counts: readonly number[],
  { document, findings }: Reading,
): unknown {
  const spec = scenario.ladder;
  const brought = brings.flatMap((paths, i) => (counts[i]! > 0 ? paths : []));
  const missing = without.filter((path) => !brought.includes(path));
  const at: Path = ['ladder', 'start', 'change'];
  const there = withOwnStrategies(spec, withoutParts(scenario, missing));
  let built = applyChanges(there, spec.start.change, document, at, findings);
  spec.steps.forEach((step, i) => {
    if (counts[i]! === 0) return;
    const path = ['ladder', 'steps', i];
    built = applyChanges(built, step.change ?? {}, document, [...path, 'change'], findings);
    for (const [spelt, amount] of Object.entries(step.add ?? {})) {
      const fault = additionFault(built, spelt);
      const line = document.lineOf([...path, 'add', spelt]);
      if (fault !== undefined) findings.push({ file: document.file, line, path: spelt, ...fault });
      else changeAt(built, spelt, (present) => Number(present) + amount * counts[i]!);
    }
  });
  return built;
}

/** A strategy that no step follows need not fit a household on the way. */
function withOwnStrategies(spec: LadderSpec, { strategies, ...rest }: CheckedScenario): unknown {
  const ids = [spec.start.strategy, ...spec.steps.flatMap((step) => step.strategy ?? [])];
  return { ...rest, strategies: strategies.filter(({ id }) => ids.includes(id)) };
}

function additionFault(
  value: unknown,
  spelt: string,
): Pick<Finding, 'found' | 'expected' | 'hint'> | undefined {
  const places = placesAt(value, spelt);
  if (places.length === 0) {
    return {
      ...nothingNamed(spelt, []),
      expected: 'the path of a number that the household has once the steps it needs are taken',
    };
  }
  const other = places.map((at) => partAt(value, at)).find((part) => typeof part !== 'number');
  return other === undefined
    ? undefined
    : { found: spellValue(other), expected: 'a number to add to', hint: undefined };
}
