/** `rideout next-outage`: the chance to ride out the next one, and hours without in a year. */
import { askNextOutage } from '../advice/outage-lengths/next-outage.ts';
import type { PublishedId } from '../advice/outage-lengths/published-figures.ts';
import { loadScenario } from '../node/load-scenario.ts';
import type { OutageLengthsSpec } from '../scenario/schema-outage-lengths.ts';
import { exitOf, withStudies } from './asking.ts';
import { remark, say, terminalLook } from './output.ts';
import { renderNextOutage } from './render-next-outage.ts';
import { OptionError } from './report-error.ts';
import { sayCautions } from './say-cautions.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeResult } from './write-result.ts';

export interface NextOutageOptions extends StudyVerbOptions {
  readonly published?: PublishedId;
  readonly hours?: number[];
  readonly perYear?: number;
}

export async function nextOutage(path: string, options: NextOutageOptions): Promise<number> {
  const { seed, draws } = options;
  const lengths = lengthsGiven(options);
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  if (lengths === undefined && scenario.outageLengths === undefined)
    remark(
      'No outageLengths in the scenario: the United States in 2017 stand in (--published us-2017).',
      options,
    );
  const answer = await withStudies(options, (ask) => askNextOutage(scenario, { seed, draws }, ask, lengths));
  if (answer === undefined) return exitOf(answer);
  say(options.json === true ? JSON.stringify(answer) : renderNextOutage(answer, terminalLook(options)));
  if (options.json !== true) sayCautions(scenario, options);
  await writeResult(options, answer, 'next-outage', async () => {
    const { nextOutageTable } = await import('../advice/outage-lengths/next-outage-table.ts');
    return { 'next-outage': nextOutageTable(answer) };
  });
  return exitOf(answer);
}

/** Undefined: the scenario's. @throws OptionError when options contradict each other */
function lengthsGiven({ published, hours, perYear }: NextOutageOptions): OutageLengthsSpec | undefined {
  if (published !== undefined && hours !== undefined)
    throw new OptionError('--published and --hours: found both; expected one of them');
  if (perYear !== undefined && hours === undefined)
    throw new OptionError('--per-year: found without --hours; expected both, or neither');
  if (published !== undefined) return { published };
  if (hours === undefined) return undefined;
  return { kinds: [{ hours, perYear: perYear ?? 1 }], source: 'the list given with --hours' };
}
