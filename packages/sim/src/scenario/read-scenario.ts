/** A scenario file, read and checked: every fault at once. */
import { applyChanges } from './changes.ts';
import { AS_DESCRIBED, crossCheck } from './cross-checks.ts';
import { sayingOf, ScenarioError, type Finding } from './findings.ts';
import {
  allParts,
  fittingLadder,
  fittingParts,
  LADDER_READS,
  type FittingParts,
  type PartKey,
} from './fitting-parts.ts';
import { parseLocated, type LocatedDocument, type Path } from './located-document.ts';
import { readLadder, type CheckValue, type ReadLadder } from './read-ladder.ts';
import { scenarioSchema, type CheckedScenario } from './schema.ts';
import { schemaFindings } from './schema-findings.ts';
import { fillTypical, type TypicalAppliances } from './typical.ts';

/** A scenario as written, checked, with every alternative's whole household checked too. */
export interface ReadScenario {
  readonly file: string;
  readonly scenario: CheckedScenario;
  /** The first is the one the others are compared with. */
  readonly alternatives: readonly {
    readonly id: string;
    readonly title: string;
    readonly scenario: CheckedScenario;
  }[];
  /** When the scenario has one. */
  readonly ladder: ReadLadder | undefined;
  readonly document: LocatedDocument;
}

/** A scenario as far as it can be read, with everything that is wrong with it. */
export interface LookedOver {
  readonly document: LocatedDocument;
  readonly findings: readonly Finding[];
  /** Undefined when there are findings. */
  readonly read: ReadScenario | undefined;
  readonly fitting: FittingParts;
}

/**
 * Reads a scenario from the text of a YAML or JSON file.
 *
 * @param file name used in messages
 * @param typical rows of data/appliances.csv
 * @throws ScenarioError with every finding
 */
export function readScenario(text: string, file: string, typical: TypicalAppliances): ReadScenario {
  const { read, findings } = lookOver(text, file, typical);
  if (read === undefined) throw new ScenarioError(findings);
  return read;
}

/**
 * The same for a caller that has more to find, such as files that the scenario names. Parts that fit the schema are
 * checked whatever is wrong with the others.
 *
 * @throws ScenarioError where the text cannot be read as YAML or JSON
 */
export function lookOver(text: string, file: string, typical: TypicalAppliances): LookedOver {
  const document = parseLocated(text, file);
  const slips: Finding[] = [];
  const value = fillTypical(document.value, typical, document, slips);
  const base = check(value, document);
  const findings = [...slips, ...base.findings];
  const { scenario, fitting } = base;
  const versions = readVersions(value, base, document, findings);
  const looked = { document, findings, fitting };
  if (findings.length > 0 || scenario === undefined) return { ...looked, read: undefined };
  const changed = versions.alternatives.map((a) => ({ ...a, scenario: a.scenario! }));
  const first = scenario.alternatives.some((a) => Object.keys(a.change).length === 0)
    ? []
    : [{ id: AS_DESCRIBED, title: 'As described', scenario }];
  const alternatives = [...first, ...changed];
  return { ...looked, read: { file, scenario, alternatives, ladder: versions.ladder, document } };
}

interface Versions {
  readonly alternatives: readonly {
    readonly id: string;
    readonly title: string;
    readonly scenario: CheckedScenario | undefined;
  }[];
  readonly ladder: ReadLadder | undefined;
}

/** Alternatives and ladder, as far as what they change fits the schema. What is wrong without them is not told again. */
function readVersions(
  value: unknown,
  { scenario, fitting, findings: ofBase }: Checked,
  document: LocatedDocument,
  findings: Finding[],
): Versions {
  const { parts, whole } = fitting;
  const told = new Set(ofBase.map(sayingOf));
  const checkAt: CheckValue = (built, at, found) => {
    const checked = check(built, document, at);
    found.push(...checked.findings.filter((finding) => !told.has(sayingOf(finding))));
    return checked.scenario;
  };
  const changed = whole.has('alternatives') ? parts.alternatives : [];
  const alternatives = changed.map(({ id, title, change }, i) => {
    if (!touched(change).every((key) => whole.has(key))) return { id, title, scenario: undefined };
    const at: Path = ['alternatives', i, 'change'];
    const before = findings.length;
    const alternative = applyChanges(value, change, document, at, findings);
    return { id, title, scenario: findings.length > before ? undefined : checkAt(alternative, at, findings) };
  });
  if (whole.has('strategies')) checkSameStrategies(parts, alternatives, document, findings);
  return { alternatives, ladder: ladderOf() };

  function ladderOf(): ReadLadder | undefined {
    const ladder = fittingLadder(parts.ladder ?? (value as { ladder?: unknown } | null)?.ladder);
    if (ladder === undefined || !LADDER_READS.every((key) => whole.has(key))) return undefined;
    const sound = Object.fromEntries([...whole].map((key) => [key, parts[key]]));
    const described = scenario ?? ({ ...(value as object), ...sound } as CheckedScenario);
    return readLadder(described, ladder, { document, findings, check: checkAt });
  }
}

/** Parts of the household that a change goes into. A part that there is not is a fault of the change itself. */
function touched(change: Readonly<Record<string, unknown>>): PartKey[] {
  const keys = Object.keys(change).map((path) => path.split('.')[0]!);
  return keys.filter((key): key is PartKey => Object.hasOwn(scenarioSchema.shape, key));
}

interface Checked {
  /** Undefined when it does not fit the schema. */
  readonly scenario: CheckedScenario | undefined;
  readonly fitting: FittingParts;
  readonly findings: readonly Finding[];
}

/** The value against the schema, and what fits it against the cross-checks. */
function check(value: unknown, document: LocatedDocument, at: Path = []): Checked {
  const result = scenarioSchema.safeParse(value);
  if (result.success) {
    const fitting = allParts(result.data);
    return { scenario: result.data, fitting, findings: crossCheck(fitting, document, at) };
  }
  const fitting = fittingParts(value);
  const found = schemaFindings(result.error.issues, document, value);
  const placed = at.length === 0 ? found : found.map((f) => ({ ...f, line: document.lineOf(at) }));
  return { scenario: undefined, fitting, findings: [...placed, ...crossCheck(fitting, document, at)] };
}

/** Curves are compared strategy by strategy: every alternative must have the same ones. */
function checkSameStrategies(
  base: Pick<CheckedScenario, 'strategies'>,
  alternatives: readonly { scenario: CheckedScenario | undefined }[],
  document: LocatedDocument,
  findings: Finding[],
): void {
  const ids = base.strategies.map((s) => s.id).join(', ');
  alternatives.forEach(({ scenario }, i) => {
    const theirs = scenario?.strategies.map((s) => s.id).join(', ') ?? ids;
    if (theirs === ids) return;
    const line = document.lineOf(['alternatives', i, 'change']);
    findings.push({
      file: document.file,
      line,
      path: 'strategies',
      found: theirs,
      expected: `the same strategies as the scenario: ${ids}`,
      hint: undefined,
    });
  });
}
