/** `rideout days`: the main study. */
import { scenarioCautions } from '../advice/engine-caution.ts';
import { summarise } from '../trials/summarise.ts';
import { assertCanWrite, assertCanWriteFile } from '../node/can-write.ts';
import { loadScenario } from '../node/load-scenario.ts';
import { runStudy, type StudyRun } from '../node/run-study.ts';
import { counted } from './counted.ts';
import { EXIT } from './exit-codes.ts';
import { fileSize } from './file-size.ts';
import { remark, say, terminalLook } from './output.ts';
import { startProgress } from './progress.ts';
import { assertPublisher, publishWith, readyPage } from './publish.ts';
import { withAsked } from './render-overrides.ts';
import { renderStudy } from './render-study.ts';
import type { StudyVerbOptions } from './study-options.ts';
import { writeFiles } from './write-result.ts';

export interface DaysOptions extends StudyVerbOptions {
  readonly within?: number;
  readonly page?: string;
}

/** Returns the exit code. */
export async function days(path: string, options: DaysOptions): Promise<number> {
  const interruption = new AbortController();
  const stopAsking = onInterrupt(() => {
    remark('\nStopping: the outages begun are finished first. Press Ctrl-C again to stop at once.', options);
    interruption.abort();
  });
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  if (options.out !== undefined) await assertCanWrite(options.out);
  if (options.page !== undefined) {
    await assertCanWriteFile(options.page);
    assertPublisher();
  }
  for (const note of notes) remark(note, options);
  if (options.page !== undefined) void readyPage('how-many-days'); // while the study runs
  const progress = startProgress(options.draws, options);
  let run: StudyRun;
  try {
    run = await runStudy(scenario, {
      seed: options.seed,
      draws: options.draws,
      workers: options.workers,
      untilHalfWidthDays: options.within,
      onProgress: progress.update,
      onTrouble: (message) => remark(message, options),
      signal: interruption.signal,
    });
  } finally {
    progress.stop();
    stopAsking();
  }
  if (run.draws === 0) {
    remark('Interrupted before the first outage was finished: nothing to report.', options);
    return EXIT.interrupted;
  }
  await report(run, notes, options);
  return run.ended === 'interrupted' ? EXIT.interrupted : EXIT.done;
}

async function report(run: StudyRun, notes: readonly string[], options: DaysOptions): Promise<void> {
  const summary = withAsked(summarise(run.study, run.rows), options);
  if (options.json === true) say(JSON.stringify(summary));
  else say(renderStudy(summary, terminalLook(options), scenarioCautions(run.study.scenario)));
  remark(howItRan(run, options), options);
  if (options.out !== undefined) {
    const { exportFiles } = await import('../trials/export-files.ts');
    await writeFiles(options.out, exportFiles(run.study, run.rows, summary), options);
  }
  if (options.page !== undefined) {
    const pages = await publishWith({
      scenario: run.study.scenario,
      outFile: options.page,
      draws: run.draws,
      seed: options.seed,
      summary,
      notes,
    });
    for (const { file, bytes } of pages)
      remark(`The page is ${file} (${fileSize(bytes)}): open it in any browser, no network needed.`, options);
  }
}

/** How many draws, how fast, and why it stopped. */
function howItRan({ draws, seconds, ended, study }: StudyRun, options: DaysOptions): string {
  const runs = draws * study.alternatives.length * study.strategies.length;
  const inverterMinutes = (runs * study.minutes * study.unitIds.length) / seconds;
  const why =
    ended === 'interrupted'
      ? ` Interrupted: ${draws} of ${options.draws} outages are in these figures.`
      : ended === 'tight enough'
        ? ` Stopped at ${counted(draws, 'outage')}: the days are known to ± ${options.within}.`
        : '';
  return `${counted(draws, 'outage')}, ${counted(runs, 'run')} in ${seconds.toFixed(1)} s: ${(inverterMinutes / 1e6).toFixed(1)} million inverter-minutes a second.${why}`;
}

/** Calls back on the first Ctrl-C; the second ends the program as usual. Returns how to stop listening. */
function onInterrupt(callback: () => void): () => void {
  process.once('SIGINT', callback);
  return () => process.removeListener('SIGINT', callback);
}
