/** Pages about one household, each a single HTML file that asks the network for nothing. */
import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { scenarioHash, type Scenario, type StudySummary } from '@rideout/sim';
import { writeWhole } from '@rideout/sim/node';
import type { EmbeddedStudy } from '../page/embedded-study.ts';
import { CONTENTS_FILE, contentsPage } from './contents-page.ts';
import { fillShell } from './fill-shell.ts';
import { keptShell } from './kept-shell.ts';
import { listedPage, type ListedPage } from './listed-page.ts';
import { pageLinks } from './page-links.ts';
import { pagesThere } from './pages-there.ts';
import { PublishError } from './publish-error.ts';

export interface PublishOptions {
  /** Resolved: nothing left to look up. */
  readonly scenario: Scenario;
  /** Notebook files; left out: "How many days?" for one file, all our own pages for a folder. */
  readonly pages?: readonly string[];
  /** Where the one page goes; or … */
  readonly outFile?: string;
  /** … the folder where each goes under its own name. Made if missing. */
  readonly outDir?: string;
  /** Draws the page starts with; default 400. */
  readonly draws?: number;
  readonly seed?: string;
  /** A finished study of the same scenario, shown before anything has run in the page; brings its own seed and draws. */
  readonly summary?: StudySummary;
  /** What a reader should look at twice, as `loadScenario` gives it. */
  readonly notes?: readonly string[];
}

export interface PublishedPage {
  readonly file: string;
  readonly bytes: number;
}

/** Our own pages, by name. */
export const OUR_PAGES = {
  'how-many-days': fileURLToPath(new URL('../../pages/how-many-days.html', import.meta.url)),
  'which-strategy': fileURLToPath(new URL('../../pages/which-strategy.html', import.meta.url)),
  'minute-by-minute': fileURLToPath(new URL('../../pages/minute-by-minute.html', import.meta.url)),
  'one-battery-or-two': fileURLToPath(new URL('../../pages/one-battery-or-two.html', import.meta.url)),
  'through-the-year': fileURLToPath(new URL('../../pages/through-the-year.html', import.meta.url)),
  'what-to-buy-next': fileURLToPath(new URL('../../pages/what-to-buy-next.html', import.meta.url)),
  're-seed': fileURLToPath(new URL('../../pages/re-seed.html', import.meta.url)),
  'card-by-the-panel': fileURLToPath(new URL('../../pages/card-by-the-panel.html', import.meta.url)),
  'describe-your-house': fileURLToPath(new URL('../../pages/describe-your-house.html', import.meta.url)),
} as const;

const DRAWS = 400;
const SEED = 'rideout';

/**
 * Builds every page before writing any: all are written whole, or none. A folder also gets a page of contents,
 * index.html, first of those returned, which lists the pages that the folder holds already too; a page of that name
 * among those given, or among those there, stands instead.
 *
 * @throws PublishError naming the page that cannot be built; WriteError when the folder cannot be written to.
 */
export async function publishPages(options: PublishOptions): Promise<PublishedPage[]> {
  const {
    pages = options.outFile === undefined ? pagesFor(options.scenario) : [OUR_PAGES['how-many-days']],
  } = options;
  const { folder, nameOf } = destination(options, pages);
  const study = studyToEmbed(options);
  const isFolder = options.outDir !== undefined;
  const shells: string[] = [];
  for (const page of pages) shells.push(await shellOf(page));
  const listed = isFolder ? await listedPages(pages, nameOf) : [];
  const there = isFolder ? await pagesBeside(listed, { folder, study }) : [];
  const together = there.length > 0 ? inUsualOrder([...there, ...listed]) : listed;
  const alike = together.filter((page) => page.madeFrom === undefined);
  const files = pages.map((page, i) => {
    const links = isFolder ? pageLinks({ contents: CONTENTS_FILE, pages: alike }, nameOf(page)) : '';
    const html = fillShell(shells[i]!, study, links);
    return { name: nameOf(page), bytes: new TextEncoder().encode(html) };
  });
  if (isFolder && !together.some(({ name }) => name === CONTENTS_FILE)) {
    const contents = new TextEncoder().encode(contentsPage(study, together));
    files.unshift({ name: CONTENTS_FILE, bytes: contents });
  }
  await writeWhole(folder, files);
  return files.map(({ name, bytes }) => ({ file: join(folder, name), bytes: bytes.length }));
}

/** Builds what a page takes that does not depend on its household, while something else is waited for. */
export async function readyPage(page: keyof typeof OUR_PAGES): Promise<void> {
  await shellOf(OUR_PAGES[page]);
}

function listedPages(pages: readonly string[], nameOf: (page: string) => string): Promise<ListedPage[]> {
  return Promise.all(pages.map(async (page) => listedPage(nameOf(page), await readFile(page, 'utf8'))));
}

/** Pages that the folder holds and that are not written anew. */
async function pagesBeside(
  listed: readonly ListedPage[],
  { folder, study }: { readonly folder: string; readonly study: EmbeddedStudy },
): Promise<ListedPage[]> {
  const there = await pagesThere(folder, study);
  return there.filter(({ name }) => !listed.some((page) => page.name === name));
}

/** Our own first, in their usual order; the others as they come. */
function inUsualOrder(pages: readonly ListedPage[]): ListedPage[] {
  const usual = Object.values(OUR_PAGES).map((page) => basename(page));
  const place = ({ name }: ListedPage) => (usual.includes(name) ? usual.indexOf(name) : usual.length);
  return [...pages].sort((a, b) => place(a) - place(b));
}

/** Our own pages' are kept; another's may be made from files that nobody knows of. */
function shellOf(page: string): Promise<string> {
  const isOurs = Object.values(OUR_PAGES).some((ours) => ours === page);
  return isOurs ? keptShell(page, buildAnew) : buildAnew(page);
}

/** The builder takes a second to load: only where there is something to build. */
async function buildAnew(page: string): Promise<string> {
  const { buildShell } = await import('./build-shell.ts');
  return buildShell(page);
}

/** All our own pages that have something to say of this household. */
function pagesFor({ ladder }: Scenario): readonly string[] {
  return Object.values(OUR_PAGES).filter(
    (page) => ladder !== undefined || page !== OUR_PAGES['what-to-buy-next'],
  );
}

/** A summary brings its own seed and draws: they are what its figures are of. */
function studyToEmbed(options: PublishOptions): EmbeddedStudy {
  const { scenario, summary, seed = SEED, draws = DRAWS, notes = [] } = options;
  const odd = notes.length > 0 ? { notes } : {};
  if (!summary) return { scenario, seed, draws, ...odd };
  const of = summary.provenance;
  if (of.scenarioHash !== scenarioHash(scenario)) {
    throw new PublishError(`the summary is of another scenario (${of.scenarioHash}, “${of.scenarioTitle}”)`);
  }
  return { scenario, seed: of.seed, draws: of.draws, summary, ...odd };
}

function destination(
  { outFile, outDir }: PublishOptions,
  pages: readonly string[],
): { folder: string; nameOf: (page: string) => string } {
  if ((outFile === undefined) === (outDir === undefined))
    throw new PublishError('say either a file or a folder to write to');
  if (outDir !== undefined) return { folder: outDir, nameOf: (page) => basename(page) };
  if (pages.length !== 1)
    throw new PublishError(`${pages.length} pages do not go into one file: say a folder to write to`);
  return { folder: dirname(outFile!), nameOf: () => basename(outFile!) };
}
