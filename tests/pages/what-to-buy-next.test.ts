/** The page "What to buy next", opened from a file with the network off. */
import { readdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fromCSV } from 'arquero';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { publishPages } from '@rideout/notebooks/publish';
import { askHere, findLadder, type Scenario } from '@rideout/sim';
import { moneyText } from '../../packages/notebooks/src/charts/ladder-words.ts';
import { noBrowser, type OpenedPage } from './browser.ts';
import { fullHouse, smallHouse } from './houses.ts';
import { accessibility, harmDone, NO_HARM, pageBench, savedFrom, settled, widthTaken } from './page-bench.ts';
import { published, type PublishedFile } from './published.ts';

/** Which pages a folder gets is asked below of the publisher itself; what this run has built it need not build again. */
vi.mock('../../packages/notebooks/src/publish/build-shell.ts', async () => {
  const { builtShell } = await import('./published.ts');
  return { buildShell: builtShell };
});

const SEED = 'rungs';
const DRAWS = 24;
const CHOOSING = 20; // four in ten of the outages, and no fewer than twenty
const full = fullHouse();
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
  const bench = pageBench();
  let file: PublishedFile;
  /** Without anything changed; read only. */
  let whole: OpenedPage;

  beforeAll(async () => {
    file = await published('what-to-buy-next', { scenario, seed: SEED, draws: DRAWS });
    whole = await open();
  }, 120_000);

  const open = async (hash = '', options = {}) => {
    const opened = await (hash === '' ? bench.openForAll : bench.open)(file, { hash, ...options });
    await settled(opened.page);
    return opened;
  };
  const table = async (page: Page) =>
    fromCSV((await savedFrom(page, 'main', 'Save the table as CSV')).toString('utf8')).objects() as Record<
      string,
      unknown
    >[];

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
      const { page, requests, troubles } = hash === '' ? whole : await open(hash);
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

  it('says that so few outages tell little, in the saved picture too', async () => {
    expect(await whole.page.locator('#ladder-rungs .chart-title').innerText()).toContain(
      `${DRAWS} simulated outages are too few to tell`,
    );
    expect(await whole.page.locator('.headline').innerText()).toContain('So few outages cannot tell');
    const picture = (await savedFrom(whole.page, '#ladder-rungs', 'Save as SVG')).toString('utf8');
    expect(picture.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ')).toContain('are too few to tell');
  });

  it('says of an amount of money that cannot be what can, and what still holds', async () => {
    const { page } = await open('#budget=1150');
    expect(await page.locator('#ladder-rungs .provenance').innerText()).toContain(
      'As changed here: at most $\u00a01\u00a0150 for all steps.',
    );
    const money = page.getByLabel('Most money for all steps');
    await money.fill('-5');
    const note = page.locator('.setting-fault').first();
    expect(await note.innerText()).toBe(
      'An amount of money from 0 to 10\u00a0000\u00a0000, please, or nothing; still showing 1150.',
    );
    expect(await money.getAttribute('aria-invalid')).toBe('true');
    expect(page.url()).toContain('budget=1150');
    await money.fill('2 000');
    expect(await note.innerText()).toBe('');
    await expect.poll(() => page.url()).toContain('budget=2000');
  });

  for (const look of [
    { viewport: { width: 320, height: 740 }, colorScheme: 'dark' },
    { viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  ] as const)
    it(`fits, and has nothing an accessibility check objects to (${look.viewport.width} px, ${look.colorScheme})`, async () => {
      const { page } = look.viewport.width === 1280 ? whole : await open('', look);
      const { objections, passes } = await accessibility(page);
      expect(objections).toEqual([]);
      expect(passes).toBeGreaterThan(15);
      expect(await widthTaken(page)).toBeLessThanOrEqual(look.viewport.width);
    });

  it('shows hostile names as text', async () => {
    const bad = '</script><img src=x onerror="globalThis.harm = 1">';
    const ladder = { ...scenario.ladder!, startTitle: bad, currency: bad };
    const steps = ladder.steps.map((step) => ({ ...step, title: bad }));
    const other = await published('what-to-buy-next', {
      scenario: { ...scenario, title: bad, ladder: { ...ladder, steps } },
      draws: 4,
    });
    const { page, troubles } = await bench.open(other);
    await settled(page);
    expect(await harmDone(page)).toEqual(NO_HARM);
    expect(await page.locator('.headline').innerText()).toContain('<img src=x');
    expect(troubles).toEqual([]);
  });

  it('is left out for a household without a ladder, and says so where it is asked for all the same', async () => {
    const { page, troubles } = await bench.open(
      await published('what-to-buy-next', { scenario: smallHouse() }),
    );
    await page.locator('.answer').waitFor();
    expect(await page.locator('.answer').innerText()).toContain('has no ladder');
    expect(troubles).toEqual([]);
    const outDir = mkdtempSync(join(tmpdir(), 'rideout-ladder-'));
    await publishPages({ scenario: smallHouse(), outDir });
    expect(readdirSync(outDir)).not.toContain('what-to-buy-next.html');
    expect(readdirSync(outDir)).toContain('re-seed.html');
    rmSync(outDir, { recursive: true, force: true });
  }, 60_000);
});
