/** The page "How many days?", opened from a file with the network off. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import {
  atLeastThisLong,
  longestLasting,
  prepareStudy,
  runShard,
  summarise,
  type StudySummary,
} from '@rideout/sim';
import { noBrowser, openFile, settled, startBrowser } from './browser.ts';
import { published, smallHouse, type PublishedFile } from './published.ts';

const SEED = 'page test';
const DRAWS = 30;
const scenario = smallHouse();

describe.skipIf(noBrowser())('the page "How many days?"', () => {
  let browser: Browser;
  let file: PublishedFile;

  beforeAll(async () => {
    file = await published({ scenario, seed: SEED, draws: DRAWS });
    browser = await startBrowser();
  }, 60_000);
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close(); // what still runs there stops
  });
  afterAll(async () => {
    await browser?.close();
    file?.remove();
  });

  const open = (hash = '') => openFile(browser, file.file, { viewport: { width: 1280, height: 900 }, hash });
  const answer = (page: Page) => page.locator('.answer').innerText();
  const summaryOf = (draws: number, seed = SEED): StudySummary => {
    const study = prepareStudy(scenario, { seed });
    return summarise(study, runShard(study, 0, draws));
  };

  it('opens from a file, asks nothing of any network, and has nothing to complain of', async () => {
    const { page, requests, troubles } = await open();
    await settled(page);
    expect(await page.locator('.chart-picture svg').count()).toBe(2);
    expect(requests).toEqual([]);
    expect(troubles).toEqual([]);
  });

  it('says in its headline what Node works out for the same scenario, seed and draws', async () => {
    const { page } = await open();
    await settled(page);
    const summary = summaryOf(DRAWS);
    const first = summary.strategies.filter((s) => s.alternativeId === scenario.alternatives[0]!.id);
    const best = longestLasting(first);
    const days = best.nineInTenDays.value;
    expect(await answer(page)).toContain(`“${best.strategyTitle}”`);
    expect(await answer(page)).toContain(atLeastThisLong(days ?? summary.horizonDays));
    expect(await page.locator('#survival-curves .provenance').innerText()).toContain(
      summary.provenance.scenarioHash,
    );
  });

  it('works anew when a setting changes, and keeps the setting in the link', async () => {
    const { page } = await open();
    await settled(page);
    const before = await page.locator('#survival-curves .provenance').innerText();
    await page.getByLabel('Battery modules on each unit').selectOption({ label: '6' });
    await page.locator('.run', { hasText: 'outages simulated' }).waitFor();
    await expect
      .poll(() => page.locator('#survival-curves .provenance').innerText(), { timeout: 30_000 })
      .not.toBe(before);
    await settled(page);
    expect(page.url()).toContain('modules=6');
    const linked = await openFile(browser, file.file, { hash: new URL(page.url()).hash });
    await settled(linked.page);
    expect(await answer(linked.page)).toBe(await answer(page));
    expect(
      await linked.page.getByLabel('Battery modules on each unit').locator('option:checked').innerText(),
    ).toBe('6');
  });

  it('gives other figures for another seed, and the first ones again for the first seed', async () => {
    const { page } = await open('#seed=another');
    await settled(page);
    const provenance = () => page.locator('#survival-curves .provenance').innerText();
    const sentence = () => page.locator('#survival-curves .chart-key').innerText();
    expect(await provenance()).toContain('“another”');
    const other = await sentence();
    await page.getByLabel('Seed').fill(SEED);
    await expect.poll(provenance, { timeout: 30_000 }).toContain(`“${SEED}”`);
    await settled(page);
    expect(await sentence()).not.toBe(other);
    expect(page.url()).not.toContain('seed=');
  });

  it('shows another household or fewer strategies without simulating again', async () => {
    const { page } = await open();
    await settled(page);
    const second = scenario.alternatives[1]!;
    await page.getByLabel('One of the households').selectOption({ label: second.title });
    await expect.poll(() => page.locator('.headline').innerText()).toContain(second.title);
    expect(await page.locator('.run').innerText()).toContain('Settled');
    const strategies = scenario.alternatives[0]!.household.strategies;
    const keys = page.locator('#survival-curves .chart-key li');
    expect(await keys.count()).toBe(strategies.length);
    await page.getByLabel(strategies[0]!.title, { exact: true }).uncheck();
    await expect.poll(() => keys.count()).toBe(strategies.length - 1);
    for (const { title } of strategies.slice(1)) await page.getByLabel(title, { exact: true }).uncheck();
    await expect.poll(() => answer(page)).toContain('Choose a strategy');
  });

  it('can be stopped, says so, and can go on', async () => {
    const { page } = await open('#draws=5000');
    await page.locator('#survival-curves').waitFor();
    await page.getByRole('button', { name: 'Stop' }).click();
    expect(await page.locator('.run').innerText()).toMatch(/Stopped\. What is shown is of \d+ outages\./);
    await page.getByRole('button', { name: 'Run again' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
  });

  it('says which part of a link it cannot follow, and goes on with the usual setting', async () => {
    const { page, troubles } = await open('#modules=plenty&months=13&household=palace');
    await settled(page);
    const said = await page.locator('.trouble').innerText();
    for (const part of ['modules = “plenty”', 'months = “13”', 'household = “palace”'])
      expect(said).toContain(part);
    expect(troubles).toEqual([]);
  });

  it('says what to do when the simulation fails', async () => {
    const broken = await published({
      scenario: { ...scenario, site: { ...scenario.site, timeZone: 'Nowhere/At_All' } },
      draws: 5,
    });
    const { page } = await openFile(browser, broken.file);
    const trouble = page.locator('.run .trouble');
    await trouble.waitFor();
    expect(await trouble.innerText()).toMatch(/The simulation stopped\..*Put the settings back/s);
    broken.remove();
  });

  it('shows the figures it was published with before anything has run, and runs on request', async () => {
    const summary = summaryOf(20, 'published');
    const carried = await published({ scenario, summary });
    const { page, troubles } = await openFile(browser, carried.file);
    await page.locator('#survival-curves').waitFor();
    expect(await page.locator('.run').innerText()).toContain(
      'Worked out from 20 simulated outages when this page was made',
    );
    const before = await page.locator('#survival-curves').innerText();
    await page.getByRole('button', { name: 'Work it out again here' }).click();
    await settled(page);
    expect(await page.locator('#survival-curves').innerText()).toBe(before);
    expect(troubles).toEqual([]);
    carried.remove();
  });

  it('saves each chart as a picture that says what it is and where it is from, and its table with full figures', async () => {
    const { page } = await open();
    await settled(page);
    for (const chart of ['survival-curves', 'what-changes']) {
      const save = async (label: string) => {
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.locator(`#${chart}`).getByRole('button', { name: label }).click(),
        ]);
        return readFileSync(await download.path());
      };
      const svg = (await save('Save as SVG')).toString('utf8');
      expect(svg).toContain('seed “page test”');
      expect(svg).not.toMatch(/var\(|<script|href="http/);
      const png = await save('Save as PNG');
      expect(png.subarray(1, 4).toString()).toBe('PNG');
      expect(png.length).toBeGreaterThan(5000);
      const csv = (await save('Save the table as CSV')).toString('utf8').trim().split('\n');
      expect(csv.length).toBeGreaterThan(4);
      expect(csv[0]).toContain('alternative,strategy');
    }
  });

  it('carries the usual cautions', async () => {
    const { page } = await open();
    const cautions = (await page.locator('.cautions').innerText()).toLowerCase();
    for (const word of [
      'licensed electrician',
      'transfer equipment',
      'interlock',
      'backfeed',
      'outdoors',
      'carbon monoxide',
      'life-supporting',
      'local code',
    ]) {
      expect(cautions).toContain(word);
    }
  });
});
