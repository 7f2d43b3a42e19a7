/** `rideout publish`: pages for a scenario, by the notebooks package where it is installed. */
import { loadScenario } from '../node/load-scenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StudySummary } from '../trials/study-summary.ts';
import { EXIT } from './exit-codes.ts';
import { remark, say, type OutputOptions } from './output.ts';
import { OptionError } from './report-error.ts';

/** What this command asks of `@rideout/notebooks/publish`. */
interface PublishRequest {
  readonly scenario: Scenario;
  readonly outFile?: string;
  readonly outDir?: string;
  readonly pages?: readonly string[];
  readonly draws?: number;
  readonly seed?: string;
  readonly summary?: StudySummary;
}
interface Publisher {
  readonly publishPages: (request: PublishRequest) => Promise<{ file: string; bytes: number }[]>;
  readonly readyPage: (page: string) => Promise<void>;
}

export async function publishWith(request: PublishRequest): Promise<{ file: string; bytes: number }[]> {
  const publisher = await loadPublisher();
  return publisher.publishPages(request);
}

/** Begins what publishing a page takes seconds for. A fault is told when it is published. */
export async function readyPage(page: string): Promise<void> {
  try {
    await (await loadPublisher()).readyPage(page);
  } catch {
    return;
  }
}

/** The publisher is a package of its own, so that the library stays small; without it there are no pages. */
async function loadPublisher(): Promise<Publisher> {
  const name = '@rideout/notebooks/publish';
  try {
    return (await import(name)) as Publisher;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') throw error;
    throw new OptionError('pages need the package @rideout/notebooks, which is not installed here');
  }
}

export interface PublishOptions extends OutputOptions {
  readonly out: string;
  readonly draws: number;
  readonly seed: string;
  readonly weather?: string;
  readonly months?: number[];
}

export async function publish(
  path: string,
  notebooks: readonly string[],
  options: PublishOptions,
): Promise<number> {
  const { scenario, notes } = loadScenario(path, { weatherYear: options.weather, months: options.months });
  for (const note of notes) remark(note, options);
  const pages = notebooks.length > 0 ? { pages: notebooks } : {};
  const written = await publishWith({
    scenario,
    outDir: options.out,
    draws: options.draws,
    seed: options.seed,
    ...pages,
  });
  for (const { file, bytes } of written) say(`${file}  ${(bytes / 1e6).toFixed(1)} MB`);
  return EXIT.done;
}
