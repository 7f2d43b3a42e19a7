/** Pages published for a test. What takes long, building the page, happens once in a run, whoever asks. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inject } from 'vitest';
import type { Scenario, StudySummary } from '@rideout/sim';
import type { OUR_PAGES } from '@rideout/notebooks/publish';
import { fillShell } from '../../packages/notebooks/src/publish/fill-shell.ts';
import { fileOf } from './houses.ts';

export type PageName = keyof typeof OUR_PAGES;

interface AboutThisHousehold {
  readonly scenario: Scenario;
  readonly draws?: number;
  readonly seed?: string;
  /** Brings its own seed and draws; the page then runs nothing before it is asked to. */
  readonly summary?: StudySummary;
  /** What is to be looked at twice. */
  readonly notes?: readonly string[];
}

export interface PublishedFile {
  readonly file: string;
  readonly html: string;
  readonly bytes: number;
}

const FEW = 20; // draws, where a test says nothing; the first figures of a page are of so many in any case

/** One page of ours. `tests/pages/offline.test.ts` holds that it is, byte for byte, what `publishPages` writes. */
export function published(page: PageName, about: AboutThisHousehold): Promise<PublishedFile> {
  return publishedNotebook(fileOf(`../../packages/notebooks/pages/${page}.html`), about);
}

/** Any notebook file. */
export async function publishedNotebook(
  notebook: string,
  { scenario, seed = 'rideout', draws = FEW, summary, notes }: AboutThisHousehold,
): Promise<PublishedFile> {
  const own = summary?.provenance ?? { seed, draws };
  const study = {
    scenario,
    seed: own.seed,
    draws: own.draws,
    ...(summary && { summary }),
    ...(notes && { notes }),
  };
  const html = fillShell(await builtShell(notebook), study);
  const file = join(mkdtempSync(join(inject('pagesFolder'), 'page-')), 'page.html');
  writeFileSync(file, html);
  return { file, html, bytes: Buffer.byteLength(html) };
}

/** A built page without a household, built when this run first asks for it. */
export async function builtShell(notebook: string): Promise<string> {
  const answer = await fetch(`${inject('shellsAt')}?page=${encodeURIComponent(notebook)}`);
  const text = await answer.text();
  if (!answer.ok) throw new Error(text);
  return text;
}
