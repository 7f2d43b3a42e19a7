/** A scenario file, read and checked: every fault at once. */
import { applyChanges } from './changes.ts';
import { AS_DESCRIBED, crossCheck } from './cross-checks.ts';
import { ScenarioError, type Finding } from './findings.ts';
import { parseLocated, type LocatedDocument, type Path } from './located-document.ts';
import { readLadder, type ReadLadder } from './read-ladder.ts';
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

/**
 * Reads a scenario from the text of a YAML or JSON file.
 *
 * @param file name used in messages
 * @param typical rows of data/appliances.csv
 * @throws ScenarioError with every finding
 */
export function readScenario(text: string, file: string, typical: TypicalAppliances): ReadScenario {
  const document = parseLocated(text, file);
  const findings: Finding[] = [];
  const value = fillTypical(document.value, typical, document, findings);
  const scenario = check(value, document, findings);
  if (scenario === undefined || findings.length > 0) throw new ScenarioError(findings);
  const changed = scenario.alternatives.map(({ id, title, change }, i) => {
    const at: Path = ['alternatives', i, 'change'];
    const filled = fillTypical(change, typical, document, findings, at) as Record<string, unknown>;
    const before = findings.length;
    const alternative = applyChanges(value, filled, document, at, findings);
    return {
      id,
      title,
      scenario: findings.length > before ? undefined : check(alternative, document, findings, at),
    };
  });
  checkSameStrategies(scenario, changed, document, findings);
  const checkAt = (built: unknown, at: Path) => check(built, document, findings, at);
  const ladder = scenario.ladder && readLadder(scenario, { document, findings, check: checkAt });
  if (findings.length > 0) throw new ScenarioError(findings);
  const alternatives = changed.map((a) => ({ ...a, scenario: a.scenario! }));
  const first = scenario.alternatives.some((a) => Object.keys(a.change).length === 0)
    ? []
    : [{ id: AS_DESCRIBED, title: 'As described', scenario }];
  return { file, scenario, alternatives: [...first, ...alternatives], ladder, document };
}

/** The value against the schema and the cross-checks; undefined when it does not fit the schema. */
function check(
  value: unknown,
  document: LocatedDocument,
  findings: Finding[],
  at: Path = [],
): CheckedScenario | undefined {
  const result = scenarioSchema.safeParse(value);
  if (!result.success) {
    const found = schemaFindings(result.error.issues, document, value);
    findings.push(...(at.length === 0 ? found : found.map((f) => ({ ...f, line: document.lineOf(at) }))));
    return undefined;
  }
  findings.push(...crossCheck(result.data, document, at));
  return result.data;
}

/** Curves are compared strategy by strategy: every alternative must have the same ones. */
function checkSameStrategies(
  base: CheckedScenario,
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
