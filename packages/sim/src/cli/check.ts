/** `rideout check`: can the scenario be used, what does it say, and what should be looked into before it is trusted? */
import { checkScenario } from '../advice/checks/check-scenario.ts';
import { assertCanWrite } from '../node/can-write.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { counted } from './counted.ts';
import { chosenRun } from './chosen-run.ts';
import { describeScenario } from './describe-scenario.ts';
import { EXIT } from './exit-codes.ts';
import { remark, say, signsFor, terminalLook, type OutputOptions } from './output.ts';
import { renderCheck } from './render-check.ts';
import { withAsked } from './render-overrides.ts';
import { writeResult } from './write-result.ts';

export interface CheckCommandOptions extends OutputOptions {
  readonly draws: number;
  readonly seed: string;
  readonly alternative?: string;
  readonly out?: string;
  readonly weather?: string;
  readonly months?: number[];
}

/** Findings are advice, not faults of the file: the exit code is that of a file that can be used. */
export async function check(path: string, options: CheckCommandOptions): Promise<number> {
  const { seed, draws } = options;
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  if (options.out !== undefined) await assertCanWrite(options.out);
  for (const note of notes) remark(note, options);
  const { alternative } = chosenRun(scenario, { ...options });
  if (options.json !== true && options.quiet !== true)
    say(signsFor(`${describeScenario(path, scenario, alternative).join('\n')}\n\n`, options));
  remark(`Watching ${counted(draws, 'outage')}, minute by minute …`, options);
  const report = withAsked(checkScenario(scenario, { seed, draws, alternative }), options);
  say(options.json === true ? JSON.stringify(report) : renderCheck(report, terminalLook(options)));
  await writeResult(options, report, 'check', async () => {
    const tables = await import('../advice/checks/checks-table.ts');
    return {
      findings: tables.findingsTable(report),
      numbers: tables.findingNumbersTable(report),
      unchecked: tables.uncheckedTable(report),
      subjects: tables.checkSubjectsTable(report),
    };
  });
  return EXIT.done;
}
