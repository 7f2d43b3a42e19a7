/** `rideout minutes`: one outage, minute by minute. */
import { dirname, basename } from 'node:path';
import { householdCautions } from '../advice/engine-caution.ts';
import { assertCanWriteFile } from '../node/can-write.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { writeWhole } from '../node/write-whole.ts';
import { prepareStudy } from '../trials/study.ts';
import { arrowFile, csvText, jsonText, utf8Bytes } from '../trials/table-files.ts';
import { traceDraw, type DrawTrace } from '../trials/trace-draw.ts';
import { traceProvenance, type TraceProvenance } from '../trials/trace-provenance.ts';
import { localTimes, traceTable } from '../trials/trace-table.ts';
import { chosenRun, type RunOptionTexts } from './chosen-run.ts';
import { EXIT } from './exit-codes.ts';
import { minutesFormat, type MinutesFormat } from './minutes-format.ts';
import { remark, say, signsFor, type OutputOptions } from './output.ts';
import { withAsked } from './render-overrides.ts';

export interface MinutesOptions extends OutputOptions, RunOptionTexts {
  readonly draw: number;
  readonly seed: string;
  readonly events?: boolean;
  readonly out?: string;
  readonly weather?: string;
  readonly months?: number[];
}

export async function minutes(path: string, options: MinutesOptions): Promise<number> {
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  if (options.out !== undefined) await assertCanWriteFile(options.out);
  const format = minutesFormat(options);
  for (const note of notes) remark(note, options);
  const study = prepareStudy(scenario, { seed: options.seed });
  const { alternative, strategy } = chosenRun(scenario, options);
  const trace = traceDraw(study, { draw: options.draw, alternative, strategy });
  remark(
    `Draw ${options.draw} of seed ${options.seed}, scenario ${study.scenarioHash}: ${study.alternatives[alternative]!.title}; ${study.strategies[strategy]!.title}.`,
    options,
  );
  const { weather, months } = options;
  const { provenance } = withAsked({ provenance: traceProvenance(study, trace) }, { weather, months });
  const bytes = written(trace, provenance, format, options);
  for (const caution of householdCautions(scenario.alternatives[alternative]!.household))
    remark(caution, options);
  if (options.out === undefined) say(new TextDecoder().decode(bytes));
  else {
    await writeWhole(dirname(options.out), [{ name: basename(options.out), bytes }]);
    remark(`Written: ${options.out} (${trace.minutes} minutes).`, options);
  }
  return EXIT.done;
}

function written(
  trace: DrawTrace,
  provenance: TraceProvenance,
  format: MinutesFormat,
  options: MinutesOptions,
): Uint8Array {
  if (format === 'txt') return utf8Bytes(`${signsFor(eventLines(trace), options)}\n`);
  if (options.events === true) return utf8Bytes(`${eventsJson(trace)}\n`);
  const table = traceTable(trace);
  if (format === 'arrow') return arrowFile('minutes', table, provenance).bytes;
  const text = format === 'csv' ? csvText(table, provenance) : jsonText(table, provenance);
  return utf8Bytes(`${text.trimEnd()}\n`);
}

/** What happened, each with its local time; the end of the runtime is one of them, where there is one. */
function eventsJson(trace: DrawTrace): string {
  const times = localTimes(trace);
  return JSON.stringify(trace.events.map((event) => ({ localTime: times[event.minute]!, ...event })));
}

/** The outage told as a list of events. */
function eventLines(trace: DrawTrace): string {
  const times = localTimes(trace);
  const first = `${times[0]!}  the grid goes`;
  const last =
    trace.runtimeMinutes === null
      ? 'tier 1 never went without within the horizon'
      : `tier 1 went without after ${(trace.runtimeMinutes / 1440).toFixed(2)} days`;
  return [first, ...trace.events.map(({ minute, text }) => `${times[minute]!}  ${text}`), last].join('\n');
}
