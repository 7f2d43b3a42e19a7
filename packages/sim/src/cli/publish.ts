/** `rideout publish`: pages for a scenario, by the notebooks package where it is installed. */
import { assertCanWrite } from '../node/can-write.ts';
import { loadScenario } from '../node/load-scenario.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StudySummary } from '../trials/study-summary.ts';
import { EXIT } from './exit-codes.ts';
import { fileSize } from './file-size.ts';
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
  /** What a reader of the pages should look at twice. */
  readonly notes?: readonly string[];
}
interface PublishedFile {
  readonly file: string;
  readonly bytes: number;
}
interface Publisher {
  readonly publishPages: (request: PublishRequest) => Promise<PublishedFile[]>;
  readonly readyPage: (page: string) => Promise<void>;
}

export async function publishWith(request: PublishRequest): Promise<PublishedFile[]> {
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
const PUBLISHER = '@rideout/notebooks/publish';

/**
 * Looks whether there is a publisher, without the seconds of loading it.
 *
 * @throws OptionError when there is none
 */
export function assertPublisher(): void {
  try {
    import.meta.resolve(PUBLISHER);
  } catch (error) {
    throw unlessMissing(error);
  }
}

async function loadPublisher(): Promise<Publisher> {
  try {
    return (await import(PUBLISHER)) as Publisher;
  } catch (error) {
    throw unlessMissing(error);
  }
}

function unlessMissing(error: unknown): unknown {
  if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') return error;
  return new OptionError('pages need the package @rideout/notebooks, which is not installed here');
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
  await assertCanWrite(options.out);
  assertPublisher();
  for (const note of [...notes, ...leftOut(scenario, notebooks)]) remark(note, options);
  const pages = notebooks.length > 0 ? { pages: notebooks } : {};
  const written = await publishWith({
    scenario,
    outDir: options.out,
    draws: options.draws,
    seed: options.seed,
    notes,
    ...pages,
  });
  say(publishedList(written, options));
  return EXIT.done;
}

/** Pages that are promised and have nothing to say of this household. */
export function leftOut({ ladder }: Pick<Scenario, 'ladder'>, notebooks: readonly string[]): string[] {
  if (ladder !== undefined || notebooks.length > 0) return [];
  return [
    'No ladder in the scenario: the page “What to buy next” is left out. data/full-house.yaml has one to start from.',
  ];
}

/** The files written, a line each, or as JSON. */
export function publishedList(written: readonly PublishedFile[], { json }: OutputOptions): string {
  if (json === true) return JSON.stringify(written.map(({ file, bytes }) => ({ file, bytes })));
  return written.map(({ file, bytes }) => `${file}  ${fileSize(bytes)}`).join('\n');
}
