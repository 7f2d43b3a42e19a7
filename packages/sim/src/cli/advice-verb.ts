/** What the verbs of advice do alike: read the scenario, then say the answer and write it. */
import type { ColumnTable } from 'arquero';
import { loadScenario } from '../node/load-scenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Provenance } from '../trials/study-summary.ts';
import { EXIT } from './exit-codes.ts';
import { remark, say, terminalLook } from './output.ts';
import { withAsked, type Overrides } from './render-overrides.ts';
import type { TerminalLook } from './render-style.ts';
import { sayCautions } from './say-cautions.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeResult } from './write-result.ts';

/** The scenario with what stands in for parts of it; says what there is to note. */
export function scenarioFor(path: string, options: StudyVerbOptions): Scenario {
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  return scenario;
}

interface Telling<Answer> {
  /** Of its file. */
  readonly name: string;
  readonly render: (answer: Answer, look: TerminalLook) => string;
  readonly tables: (answer: Answer) => Promise<Readonly<Record<string, ColumnTable>>>;
}

/** @param found undefined when it was interrupted. @returns the exit code */
export async function tellAnswer<Answer extends { readonly provenance: Provenance }>(
  found: Answer | undefined,
  scenario: Scenario,
  options: StudyVerbOptions & Overrides,
  { name, render, tables }: Telling<Answer>,
): Promise<number> {
  if (found === undefined) return EXIT.interrupted;
  const answer = withAsked(found, options);
  if (options.json === true) say(JSON.stringify(answer));
  else {
    say(render(answer, terminalLook(options)));
    sayCautions(scenario, options);
  }
  await writeResult(options, answer, name, () => tables(answer));
  return EXIT.done;
}
