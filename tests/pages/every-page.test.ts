/** What holds for every one of our pages: keyboard, narrow screens, paper, stillness; how big they are and how soon they answer. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { OUR_PAGES, publishPages } from '@rideout/notebooks/publish';
import { loadScenario } from '@rideout/sim/node';
import { noBrowser, openFile, startBrowser } from './browser.ts';
import { fileOf } from './published.ts';

const full = loadScenario(fileOf('../../data/full-house.yaml')).scenario;
const NAMES = Object.keys(OUR_PAGES) as (keyof typeof OUR_PAGES)[];
/** So that a test does not wait for hundreds of runs. */
const HASHES: Partial<Record<keyof typeof OUR_PAGES, string>> = {
  're-seed': '#rows=20&seeds=2',
  'through-the-year': '#draws=4',
};
const DRAWS = 20; // the first figures of a page are of twenty outages, however many it goes on to
/** Without Vega or without any chart a page must not weigh what one with both does. Bytes, the full demo household. */
const MOST_BYTES: Readonly<Record<keyof typeof OUR_PAGES, number>> = {
  'how-many-days': 1_450_000,
  'which-strategy': 950_000,
  'minute-by-minute': 1_750_000,
  'one-battery-or-two': 1_500_000,
  'through-the-year': 1_350_000,
  'what-to-buy-next': 750_000,
  're-seed': 1_250_000,
  'card-by-the-panel': 300_000,
  'describe-your-house': 2_250_000,
};
const LETTER = { width: 816, height: 1056 }; // CSS px: 8.5 × 11 in at 96 px an inch

describe.skipIf(noBrowser())('every page of ours', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rideout-every-'));
  const fileOfPage = (name: string) => join(folder, `${name}.html`);
  const bytes = new Map<string, number>();
  let browser: Browser;

  beforeAll(async () => {
    for (const file of await publishPages({ scenario: full, outDir: folder, draws: DRAWS }))
      bytes.set(basename(file.file, '.html'), file.bytes);
    browser = await startBrowser();
  }, 120_000);
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close(); // what still runs there stops
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const open = (name: keyof typeof OUR_PAGES, options = {}) =>
    openFile(browser, fileOfPage(name), { hash: HASHES[name] ?? '', locale: 'en-GB', ...options });

  it('carries what it shows and no more, and shows its first chart soon: the table', async () => {
    const rows: { page: string; 'size, kB': number; 'first chart, ms': number }[] = [];
    for (const name of NAMES) {
      const page = await (await browser.newContext({ offline: true })).newPage();
      await page.addInitScript(noteFirstChart);
      await page.goto(`file://${fileOfPage(name)}`);
      await page.waitForFunction(() => 'firstChartMs' in globalThis, null, { timeout: 60_000 });
      const ms = await page.evaluate(() => (globalThis as { firstChartMs?: number }).firstChartMs!);
      rows.push({
        page: name,
        'size, kB': Math.round(bytes.get(name)! / 1000),
        'first chart, ms': Math.round(ms),
      });
      expect(bytes.get(name), name).toBeLessThan(MOST_BYTES[name]);
      await page.context().close();
    }
    console.table(rows);
    expect(rows).toHaveLength(NAMES.length);
  }, 120_000);

  for (const name of NAMES) {
    it(`${name}: can be worked by keyboard alone; the focus is seen; controls and tables are reached`, async () => {
      const { page, troubles } = await open(name, { viewport: { width: 1280, height: 900 } });
      await whenDone(page);
      await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
      const walk = await tabThrough(page);
      expect(walk.unseen, 'stops where the focus is not seen').toEqual([]);
      expect(walk.missed, 'controls and tables that Tab does not reach').toEqual([]);
      expect(walk.stops).toBeGreaterThan(2);
      expect(troubles).toEqual([]);
      await page.context().close();
    }, 120_000);

    it(`${name}: fits 320 and 390 px without scrolling sideways, and stands still where stillness is asked for`, async () => {
      for (const width of [320, 390]) {
        const { page } = await open(name, { viewport: { width, height: 800 }, reducedMotion: 'reduce' });
        await whenDone(page);
        await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
        expect(
          await page.evaluate(() => document.documentElement.scrollWidth),
          `${width} px`,
        ).toBeLessThanOrEqual(width);
        expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
        const moving = await page.evaluate(
          () =>
            [...document.querySelectorAll('*')].filter((e) => {
              const { transitionDuration, animationName } = getComputedStyle(e);
              return parseFloat(transitionDuration) > 0 || animationName !== 'none';
            }).length,
        );
        expect(moving).toBe(0);
        await page.context().close();
      }
    }, 120_000);

    it(`${name}: prints whole: nothing runs off the paper, no picture is taller than a page`, async () => {
      const { page } = await open(name, { viewport: LETTER, colorScheme: 'dark' });
      await whenDone(page);
      await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize({ width: LETTER.width - 84, height: LETTER.height }); // less margins of 11 mm
      const cut = await page.evaluate((paper) => {
        const past = [...document.querySelectorAll<HTMLElement>('main *')].filter((e) => {
          const box = e.getBoundingClientRect();
          return box.width > 0 && box.right > innerWidth + 1 && getComputedStyle(e).visibility !== 'hidden';
        });
        const tall = [...document.querySelectorAll('.chart-picture, .cautions, pre')].filter(
          (e) => e.getBoundingClientRect().height > paper.height - 90,
        );
        const hidden = [...document.querySelectorAll('.table-scroll, .chart-picture')].filter(
          (e) => e.scrollWidth > e.clientWidth + 1,
        );
        return [...past, ...tall, ...hidden].map((e) => e.outerHTML.slice(0, 120));
      }, LETTER);
      expect(cut).toEqual([]);
      expect(
        await page.locator('button:not(.outage-events button), select').filter({ visible: true }).count(),
      ).toBe(0);
      for (const format of ['Letter', 'A4'] as const) {
        const sides = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;
        expect(sides, format).toBeGreaterThanOrEqual(1);
        if (name === 'card-by-the-panel') expect(sides, format).toBe(1);
      }
      await page.context().close();
    }, 120_000);
  }
});

/** Runs in the page before anything else: when the first chart, or the card, is there. */
function noteFirstChart(): void {
  const look = () => {
    if (!document.querySelector('.chart-picture svg, .card[data-type-pt]')) return;
    requestAnimationFrame(() => Object.assign(globalThis, { firstChartMs: performance.now() }));
    watch.disconnect();
  };
  const watch = new MutationObserver(look);
  watch.observe(document, { childList: true, subtree: true, attributes: true });
}

/** Until every line that runs something says that it has settled; a page without one is done at once. */
async function whenDone(page: Page): Promise<void> {
  await page.locator('figure.chart, .card[data-type-pt]').first().waitFor({ timeout: 60_000 });
  await page.waitForFunction(
    () =>
      [...document.querySelectorAll('.run')].every((line) =>
        /^\s*(Settled|Worked out)/.test(line.textContent ?? ''),
      ),
    null,
    { timeout: 90_000 },
  );
  await page.getByText('Looking the household over').waitFor({ state: 'detached', timeout: 60_000 });
  await page.waitForTimeout(300); // what follows from the last figures is drawn
}

const MOST_STOPS = 900;

interface Walk {
  readonly stops: number;
  readonly unseen: readonly string[];
  readonly missed: readonly string[];
}

/** Tab from the first stop to the last. */
async function tabThrough(page: Page): Promise<Walk> {
  const unseen: string[] = [];
  let stops = 0;
  for (; stops < MOST_STOPS; stops++) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      if (at === document.body) return undefined;
      at.dataset['reached'] = 'yes';
      const { outlineStyle, outlineWidth } = getComputedStyle(at);
      return {
        seen: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2,
        html: at.outerHTML.slice(0, 100),
      };
    });
    if (!stop) break;
    if (!stop.seen) unseen.push(stop.html);
  }
  const missed = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'main :is(button:not(:disabled), select, input, summary, a[href], [tabindex="0"])',
      ),
    ]
      .filter((e) => e.dataset['reached'] !== 'yes' && e.getClientRects().length > 0)
      .map((e) => e.outerHTML.slice(0, 100)),
  );
  return { stops, unseen, missed };
}
