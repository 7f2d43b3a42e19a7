/** What the files of page tests share: a browser for a block of tests, pages opened in it, and waiting for what a page says. */
import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { openFile, startBrowser, type OpenedPage, type OpenOptions } from './browser.ts';
import type { PublishedFile } from './published.ts';

export const DESKTOP = { width: 1280, height: 900 };

export interface PageBench {
  readonly browser: Browser;
  /** With everything that it asks of a network and complains of. What still runs in it stops after the test. */
  readonly open: (page: PublishedFile, options?: OpenOptions) => Promise<OpenedPage>;
  /** Stays as it is from test to test: for a page that tests only read. */
  readonly openForAll: (page: PublishedFile, options?: OpenOptions) => Promise<OpenedPage>;
}

/** One browser for the block of tests that calls this. */
export function pageBench(): PageBench {
  let browser: Browser;
  const forAll = new Set<BrowserContext>();
  beforeAll(async () => {
    browser = await startBrowser();
  }, 60_000);
  afterEach(async () => {
    const left = browser.contexts().filter((context) => !forAll.has(context));
    await Promise.all(left.map((context) => context.close()));
  });
  afterAll(() => browser?.close());
  const open = ({ file }: PublishedFile, options: OpenOptions = {}) =>
    openFile(browser, file, { viewport: DESKTOP, ...options });
  return {
    get browser() {
      return browser;
    },
    open,
    async openForAll(page, options) {
      const opened = await open(page, options);
      forAll.add(opened.page.context());
      return opened;
    },
  };
}

/** Until every line of the page that runs something says that it has settled, and there are so many of them. */
export async function settled(page: Page, lines = 1): Promise<void> {
  await page.waitForFunction(
    (least) => {
      const said = [...document.querySelectorAll('.run')].map((line) => line.textContent ?? '');
      return said.length >= least && said.every((words) => /^\s*Settled/.test(words));
    },
    lines,
    { timeout: 90_000 },
  );
}

const STILL_MS = 150;

/** Until nothing in the page has changed for a moment: what follows from the last figures, or a new width, is drawn. */
export function standsStill(page: Page): Promise<void> {
  return page.evaluate(
    (stillMs) =>
      new Promise<void>((done) => {
        let still: ReturnType<typeof setTimeout>;
        const wait = () => {
          clearTimeout(still);
          still = setTimeout(done, stillMs);
        };
        const everything = { subtree: true, childList: true, attributes: true, characterData: true };
        new MutationObserver(wait).observe(document, everything);
        requestAnimationFrame(() => requestAnimationFrame(wait)); // a new width is noticed as a frame is made
      }),
    STILL_MS,
  );
}

/** All that can be unfolded is. */
export function unfoldAll(page: Page): Promise<void> {
  return page.evaluate(() =>
    document.querySelectorAll('details').forEach((details) => (details.open = true)),
  );
}

export function widthTaken(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth);
}

/**
 * What an accessibility check (axe, every rule of it) objects to on the page with all unfolded, and how many of its
 * rules found something to be content with: one that looks at nothing objects to nothing.
 */
export async function accessibility(page: Page): Promise<{ objections: readonly object[]; passes: number }> {
  await unfoldAll(page);
  const { violations, passes } = await new AxeBuilder({ page })
    .setLegacyMode() // in the page itself, which has no frames; otherwise the answers are gathered in a second one
    .options({ resultTypes: ['violations'] }) // the others are counted, but not each of their elements written out
    .analyze();
  const objections = violations.map(({ id, impact, nodes }) => ({
    id,
    impact,
    at: nodes.map(({ html }) => html),
  }));
  return { objections, passes: passes.length };
}

/** What the page saves when a button of this name, in this part of it, is pressed. */
export async function savedFrom(page: Page, part: string, button: string): Promise<Buffer> {
  await page.bringToFront();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator(part).getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path());
}

/** What a hostile name has done: nothing, unless it was taken for markup. */
export async function harmDone(page: Page): Promise<{ harm: unknown; pictures: number }> {
  const harm = await page.evaluate(() => (globalThis as { harm?: unknown }).harm);
  return { harm, pictures: await page.locator('img').count() };
}
export const NO_HARM = { harm: undefined, pictures: 0 };
