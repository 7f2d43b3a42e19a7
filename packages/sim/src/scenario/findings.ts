/** What is wrong with a file: findings are data, turned into sentences below. */

/** Where and what. Lines count from 1. */
export interface Finding {
  readonly file: string;
  readonly line: number | undefined;
  /** Path inside the file, such as `units.east.battery.modules`; empty for the file as a whole. */
  readonly path: string;
  readonly found: string;
  readonly expected: string;
  /** The nearest valid word for a misspelt one, or another way out. */
  readonly hint: string | undefined;
}

/** One file, or what it refers to, cannot be used. Carries every finding. */
export class ScenarioError extends Error {
  override readonly name = 'ScenarioError';

  constructor(readonly findings: readonly Finding[]) {
    super(wordFindings(findings));
  }
}

/** Whether a caught error carries findings, whichever copy of the library threw it. */
export function isScenarioError(error: unknown): error is ScenarioError {
  return error instanceof Error && error.name === 'ScenarioError' && 'findings' in error;
}

/**
 * One finding as a line: file:line, path, what was found, what was expected, the likely slip. What stands in the file may
 * hold characters that a terminal would take as commands: they are spelt out.
 */
export function wordFinding(finding: Finding): string {
  const { file, line, path } = finding;
  const where = line === undefined ? file : `${file}:${line}`;
  const what = path === '' ? '' : ` ${path}:`;
  return `${speltOut(`${where}:${what}`)} ${wordFault(finding)}`;
}

/** What was found, what was expected and the likely slip, for whoever has said where. */
export function wordFault({ found, expected, hint }: Pick<Finding, 'found' | 'expected' | 'hint'>): string {
  return speltOut(`found ${found}; expected ${expected}.${hint === undefined ? '' : ` ${hint}`}`);
}

function speltOut(text: string): string {
  return text.replaceAll(
    /\p{Cc}/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** What a finding says, wherever: the same said of another version of a household is no news. */
export function sayingOf({ path, found, expected }: Finding): string {
  return JSON.stringify([path, found, expected]);
}

/** More are counted, not told: a file of another kind can have one on every line. */
const MOST_TOLD = 20;

/** All findings in one message, in the order of their lines. */
export function wordFindings(findings: readonly Finding[]): string {
  const sorted = [...findings].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  const head = findings.length === 1 ? 'One thing needs mending:' : `${findings.length} things need mending:`;
  const rest = sorted.length > MOST_TOLD ? [`  and ${sorted.length - MOST_TOLD} more`] : [];
  return [head, ...sorted.slice(0, MOST_TOLD).map((f) => `  ${wordFinding(f)}`), ...rest].join('\n');
}
