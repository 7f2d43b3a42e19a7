/** Pages published for a test, in a folder of their own that is gone afterwards. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { publishPages, type PublishOptions } from '@rideout/notebooks/publish';
import { loadScenario } from '@rideout/sim/node';
import type { Scenario } from '@rideout/sim';

/** The invented small house of data/, resolved. */
export function smallHouse(): Scenario {
  return loadScenario(fileOf('../../data/small-house.yaml')).scenario;
}

/** A file by its path from this folder. */
export function fileOf(path: string): string {
  return fileURLToPath(new URL(path, import.meta.url));
}

export interface PublishedFile {
  readonly file: string;
  readonly html: string;
  readonly bytes: number;
  /** Removes it. */
  readonly remove: () => void;
}

/** One page: ours, or the notebook file given. */
export async function published(options: Omit<PublishOptions, 'outFile' | 'outDir'>): Promise<PublishedFile> {
  const folder = mkdtempSync(join(tmpdir(), 'rideout-page-'));
  const [page] = await publishPages({ ...options, outFile: join(folder, 'page.html') });
  return {
    ...page!,
    html: readFileSync(page!.file, 'utf8'),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
