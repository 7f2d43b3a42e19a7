/** The page "What to buy next", opened from a file with the network off. */
import { AxeBuilder } from '@axe-core/playwright';
import { fromCSV } from 'arquero';
import { readdirSync, readFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { OUR_PAGES, publishPages } from '@rideout/notebooks/publish';
import { askHere, findLadder, type Scenario } from '@rideout/sim';
import { loadScenario } from '@rideout/sim/node';
import { moneyText } from '../../packages/notebooks/src/charts/ladder-words.ts';
import { noBrowser, openFile, startBrowser } from './browser.ts';
import { fileOf, published, smallHouse, type PublishedFile } from './published.ts';

const SEED = 'rungs';
const DRAWS = 24;
const CHOOSING = 20; // four in ten of the outages, and no fewer than twenty
const pages = [OUR_PAGES['what-to-buy-next']];
const full = loadScenario(fileOf('../../data/full-house.yaml')).scenario;
/** The demo house with a shorter list of steps, so that the test is soon done. */
const scenario: Scenario = {
  ...full,
  ladder: {
    ...full.ladder!,
    steps: full.ladder!.steps.filter(({ needs }) => needs.length === 0).slice(0, 4),
  },
};

describe('moneyText(amount, answer)', () => {
  it('sets thousands apart, and calls nothing free', () => {
    expect(moneyText(1234567, { currency: '€' })).toBe('€\u00a01\u00a0234\u00a0567');
    expect(moneyText(950, { currency: '' })).toBe('950');
    expect(moneyText(0, { currency: '$' })).toBe('free');
  });
});

describe.skipIf(noBrowser())('the page "What to buy next"', () => {
  let browser: Browser;
  let file: PublishedFile;

  beforeAll(async () => {
    file = await published({ scenario, pages, seed: SEED, draws: DRAWS });
    browser = await startBrowser();
  }, 60_000);
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close(); // what still runs there stops
  });
  afterAll(async () => {
    await browser?.close();
    file?.remove();
  });

  const open = async (hash = '', options = {}) => {
    const opened = await openFile(browser, file.file, {
      viewport: { width: 1280, height: 900 },
      hash,
      ...options,
    });
    await opened.page.locator('.run', { hasText: /Settled:/ }).waitFor({ timeout: 90_000 });
    return opened;
  };
  const table = async (page: Page) => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the table as CSV' }).click(),
    ]);
    return fromCSV(readFileSync(await download.path(), 'utf8')).objects() as Record<string, unknown>[];
  };

  it('shows the rungs that the library finds for the same seed and outages, within a budget too', async () => {
    for (const [hash, budget] of [
      ['', undefined],
      ['#budget=1150', 1150],
    ] as const) {
      const answer = await findLadder(
        scenario,
        { seed: SEED, draws: DRAWS, choosingDraws: CHOOSING, budget },
        askHere,
      );
      const { page, requests, troubles } = await open(hash);
      const rows = await table(page);
      expect(rows.map(({ steps, paid, days, gainDays }) => ({ steps, paid, days, gainDays }))).toEqual(
        answer.rungs.map((rung) => ({
          steps: rung.stepIds.join(' '),
          paid: rung.paid,
          days: rung.days.value,
          gainDays: rung.gainDays.value,
        })),
      );
      expect(rows.length).toBeGreaterThan(0);
      const next = answer.rungs.find(({ price }) => price > 0);
      if (next) expect(await page.locator('.answer').innerText()).toContain(next.title);
      for (const step of answer.left)
        expect(await page.locator('#ladder-notes-title ~ ul').innerText()).toContain(`${step.title}`);
      expect([...requests, ...troubles]).toEqual([]);
      await page.context().close();
    }
  }, 120_000);

  it('works anew for another sureness, keeps it in the link, and says what it cannot follow', async () => {
    const { page } = await open('#confidence=0.7&modules=2');
    expect(await page.locator('.trouble').innerText()).toMatch(/confidence = “0.7”[\s\S]*modules = “2”/);
    await page.getByLabel('The days that so many outages reach').selectOption({ index: 0 });
    await expect
      .poll(() => page.locator('#ladder-rungs .chart-note').innerText(), { timeout: 60_000 })
      .toContain('half of the outages');
    expect(page.url()).toContain('confidence=0.5');
  });

  for (const look of [
    { viewport: { width: 320, height: 740 }, colorScheme: 'dark' },
    { viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  ] as const)
    it(`fits, and has nothing an accessibility check objects to (${look.viewport.width} px, ${look.colorScheme})`, async () => {
      const { page } = await open('', look);
      for (const details of await page.locator('details').all())
        await details.evaluate((d) => d.setAttribute('open', ''));
      const { violations, passes } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => ({ id, at: nodes.map((n) => n.html) }))).toEqual([]);
      expect(passes.length).toBeGreaterThan(15);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
        look.viewport.width,
      );
    });

  it('shows hostile names as text', async () => {
    const bad = '</script><img src=x onerror="globalThis.harm = 1">';
    const ladder = { ...scenario.ladder!, startTitle: bad, currency: bad };
    const steps = ladder.steps.map((step) => ({ ...step, title: bad }));
    const other = await published({
      scenario: { ...scenario, title: bad, ladder: { ...ladder, steps } },
      pages,
      draws: 4,
    });
    const { page, troubles } = await openFile(browser, other.file);
    await page.locator('.run', { hasText: /Settled:/ }).waitFor({ timeout: 90_000 });
    expect(await page.evaluate(() => (globalThis as { harm?: number }).harm)).toBeUndefined();
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.locator('.headline').innerText()).toContain('<img src=x');
    expect(troubles).toEqual([]);
    other.remove();
  });

  it('is left out for a household without a ladder, and says so where it is asked for all the same', async () => {
    const outDir = mkdtempSync(join(tmpdir(), 'rideout-ladder-'));
    await publishPages({ scenario: smallHouse(), pages, outDir });
    const { page, troubles } = await openFile(browser, join(outDir, 'what-to-buy-next.html'));
    await page.locator('.answer').waitFor();
    expect(await page.locator('.answer').innerText()).toContain('has no ladder');
    expect(troubles).toEqual([]);
    rmSync(outDir, { recursive: true, force: true });
    await publishPages({ scenario: smallHouse(), outDir });
    expect(readdirSync(outDir)).not.toContain('what-to-buy-next.html');
    expect(readdirSync(outDir)).toContain('re-seed.html');
    rmSync(outDir, { recursive: true, force: true });
  }, 60_000);
});
