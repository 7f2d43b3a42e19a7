/** `rideout needs`: how long each need is met, and how badly it is missed. */
import { askNeeds } from '../advice/needs/ask-needs.ts';
import { scenarioNeeds } from '../advice/needs/needs-job.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { exitOf, withDraws } from './asking.ts';
import { remark, say, terminalLook } from './output.ts';
import { renderNeeds } from './render-needs.ts';
import { OptionError } from './report-error.ts';
import { sayCautions } from './say-cautions.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeResult } from './write-result.ts';

export type NeedsOptions = StudyVerbOptions;

export async function needs(path: string, options: NeedsOptions): Promise<number> {
  const { seed, draws } = options;
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  if (scenarioNeeds(scenario).length === 0)
    throw new OptionError(
      `${path}: found no needs; expected a list under needs, or a need on some circuit, such as need: food`,
    );
  const answer = await withDraws(options, draws, (ask, onProgress) =>
    askNeeds(scenario, { seed, draws, onProgress }, ask),
  );
  if (answer === undefined) return exitOf(answer);
  say(options.json === true ? JSON.stringify(answer) : renderNeeds(answer, terminalLook(options)));
  if (options.json !== true) sayCautions(scenario, options);
  await writeResult(options, answer, 'needs', async () => {
    const { needsEnduranceTable } = await import('../advice/needs/needs-table.ts');
    return { needs: needsEnduranceTable(answer) };
  });
  return exitOf(answer);
}
