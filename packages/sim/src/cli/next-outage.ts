/** `rideout next-outage`: the chance to ride out the next one, and hours without in a year. */
import { askNextOutage } from '../advice/outage-lengths/next-outage.ts';
import type { PublishedId } from '../advice/outage-lengths/published-figures.ts';
import type { OutageLengthsSpec } from '../scenario/schema-outage-lengths.ts';
import { scenarioFor, tellAnswer } from './advice-verb.ts';
import { withStudies } from './asking.ts';
import { remark } from './output.ts';
import { renderNextOutage } from './render-next-outage.ts';
import { OptionError } from './report-error.ts';
import type { StudyVerbOptions } from './study-options.ts';

export interface NextOutageOptions extends StudyVerbOptions {
  readonly published?: PublishedId;
  readonly hours?: number[];
  readonly perYear?: number;
}

export async function nextOutage(path: string, options: NextOutageOptions): Promise<number> {
  const { seed, draws } = options;
  const lengths = lengthsGiven(options);
  const scenario = scenarioFor(path, options);
  if (lengths === undefined && scenario.outageLengths === undefined)
    remark(
      'No outageLengths in the scenario: the United States in 2017 stand in (--published us-2017).',
      options,
    );
  const answer = await withStudies(options, (ask) => askNextOutage(scenario, { seed, draws }, ask, lengths));
  return tellAnswer(answer, scenario, options, {
    name: 'next-outage',
    render: renderNextOutage,
    tables: async (told) => {
      const { nextOutageTable } = await import('../advice/outage-lengths/next-outage-table.ts');
      return { 'next-outage': nextOutageTable(told) };
    },
  });
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
